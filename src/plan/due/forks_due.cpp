#include "plan/due/forks_due.h"

#include <algorithm>

namespace cahier {
namespace {

constexpr int kDrills = 3;
constexpr int kLastDrill = 12;      // days before the date, from when on the last one may come
constexpr int kWeeksForThree = 28;  // days from the first one to the date

}  // namespace

ForksDue::ForksDue(const Analysis& analysis) {
  for (const Fork& fork : analysis.forks) waiting_.push_back({&fork});
}

void ForksDue::drilled(Place place, int day) {
  if (place->first < 0) place->first = day;
  place->last = day;
  if (++place->drills == kDrills) waiting_.erase(place);
}

bool ForksDue::again(const Waiting& one, int day, int end) {
  if (one.drills == 1) {
    // Nearer to the first than to the third, which is still to come.
    const int third = end - kLastDrill;
    return end - one.first >= kWeeksForThree && day - one.first >= (third - one.first) / 3;
  }
  return end - day <= kLastDrill && day - one.last > one.last - one.first;
}

bool ForksDue::ready(const Fork& fork, const RecallsDue& recalls, int day) {
  return recalls.learned_before(fork.learned, day);
}

void ForksDue::strike_met(const Task& task, const RecallsDue& recalls, int day) {
  for (auto one = waiting_.begin(); one != waiting_.end();) {
    const auto place = one++;
    const std::vector<int>& cues = place->fork->cues;
    const bool met = std::all_of(cues.begin(), cues.end(), [&](int cue) {
      return std::find(task.cues.begin(), task.cues.end(), cue) != task.cues.end();
    });
    if (met && ready(*place->fork, recalls, day)) drilled(place, day);
  }
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
  for (const Waiting& one : waiting_)
    if (one.drills == 0) tasks.push_back(task(*one.fork, make));
  return tasks;
}

}  // namespace cahier
