#include "workbook/sheets/planned_passes.h"

namespace cahier {

PassesByStretch passes_by_stretch(const Plan& plan) {
  PassesByStretch stretches;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      const std::pair<int, BarRange> where{task.piece, task.bars};
      if (task.drill == Drill::slow_pass) stretches[where].slow.push_back({day.date, &task});
      if (task.drill == Drill::counted_pass) stretches[where].counted.push_back({day.date, &task});
    }
  return stretches;
}

}  // namespace cahier
