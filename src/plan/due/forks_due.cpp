#include "plan/due/forks_due.h"

#include <algorithm>

namespace cahier {

ForksDue::ForksDue(const Analysis& analysis) {
  for (const Fork& fork : analysis.forks) waiting_.push_back(&fork);
}

bool ForksDue::ready(const Fork& fork, const RecallsDue& recalls, int day) {
  return recalls.learned_before(fork.learned, day);
}

void ForksDue::strike_met(const Task& task, const RecallsDue& recalls, int day) {
  waiting_.remove_if([&](const Fork* fork) {
    const bool met = std::all_of(fork->cues.begin(), fork->cues.end(), [&](int cue) {
      return std::find(task.cues.begin(), task.cues.end(), cue) != task.cues.end();
    });
    return met && ready(*fork, recalls, day);
  });
}

Task ForksDue::task(const Fork& fork, const TaskMaker& make) {
  Task task = make.cue_starts(fork.cues, 0);
  task.fork = true;
  task.reason = Reason::fork;
  task.reason_number = fork.bar;
  return task;
}

std::vector<Task> ForksDue::left_over(const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (const Fork* fork : waiting_) tasks.push_back(task(*fork, make));
  return tasks;
}

}  // namespace cahier
