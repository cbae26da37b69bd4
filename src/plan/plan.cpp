#include "plan/plan.h"

#include <algorithm>

namespace cahier {

std::vector<CueStart> PlannedPiece::cues_by_bar() const {
  std::vector<CueStart> sorted = cues;
  std::ranges::sort(sorted, {}, &CueStart::bar);
  return sorted;
}

double Day::minutes() const {
  double sum = 0;
  for (const Task& task : tasks) sum += task.minutes;
  return sum;
}

double Plan::minutes_total() const {
  double sum = 0;
  for (const Day& day : days) sum += day.minutes();
  return sum;
}

TaskCounts Plan::counts_from(Date date) const {
  TaskCounts counts;
  for (const Day& day : days) {
    if (day.date < date) continue;
    for (const Task& task : day.tasks) {
      if (task.drill == Drill::slow_pass || task.drill == Drill::counted_pass) ++counts.passes;
      if (task.drill == Drill::join) ++counts.joins;
      if (task.drill == Drill::run_through) counts.run_throughs += task.steps.front().times;
    }
  }
  return counts;
}

}  // namespace cahier
