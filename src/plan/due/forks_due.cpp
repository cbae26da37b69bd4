#include "plan/due/forks_due.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
ForksDue::ForksDue(const Analysis& analysis, const Method& method) : method_(method) {
  for (const ForkDrill& fork : analysis.fork_drills) waiting_.push_back({&fork});
}

void ForksDue::drilled(Place place, int day) {
  if (place->first < 0) place->first = day;
  place->last = day;
  if (++place->drills == method_.fork_drills) waiting_.erase(place);
}

int ForksDue::last_drill() const { return method_.last_fork_days - numbers::kForkLastSpare; }

bool ForksDue::again(const Waiting& one, int day, int end, int last_learned) const {
  const bool is_near = end - day <= last_drill();
  if (end - std::min(one.first, last_learned) < method_.fork_drill_days)
    return is_near && end - one.last > method_.last_fork_days;
  // Nearer to the first than to the third, which is still to come.
  if (one.drills == 1)
    return day - one.first >=
           std::max(numbers::kForkLeastGap, (end - last_drill() - one.first) / 3);
  return is_near && day - one.last > one.last - one.first;
}

int ForksDue::most_on(int day, int end, std::size_t due, int practice_days_left) const {
  const int days_for_them = end - day <= last_drill() ? practice_days_left : numbers::kForkNextDays;
  return static_cast<int>(due) > days_for_them ? 2 : 1;
}

bool ForksDue::ready(const ForkDrill& fork, const RecallsDue& recalls, int day) {
  return recalls.learned_before(fork.learned, day);
}

void ForksDue::strike_met(const Task& task, const RecallsDue& recalls, int day) {
  for (auto one = waiting_.begin(); one != waiting_.end();) {
    const auto place = one++;
    const std::vector<int>& cues = place->fork->cues;
    // Each as often as the drill begins from it.
    const bool met = std::all_of(cues.begin(), cues.end(), [&](int cue) {
      return std::count(task.cues.begin(), task.cues.end(), cue) >=
             std::count(cues.begin(), cues.end(), cue);
    });
    if (met && ready(*place->fork, recalls, day)) drilled(place, day);
  }
}

Task ForksDue::task(const ForkDrill& fork, const TaskMaker& make) {
  Task task = make.fork_drill(fork.cues, fork.ways);
  task.reason = Reason::fork;
  task.reason_number = fork.bar;
  return task;
}

std::vector<Task> ForksDue::left_over(const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (const Waiting& one : waiting_)
    if (one.drills == 0 && one.fork->required) tasks.push_back(task(*one.fork, make));
  return tasks;
}

}  // namespace cahier
