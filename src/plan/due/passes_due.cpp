#include "plan/due/passes_due.h"

#include <algorithm>

namespace cahier {

PassesDue::PassesDue(const Analysis& analysis, const Method& method) {
  for (const Stretch& stretch : analysis.stretches) spans_.push_back({stretch.bars});
  for (const BarRange& bars : analysis.return_stretches) spans_.push_back({bars});
  for (Span& span : spans_) span.hard = analysis.level_in(span.bars) >= method.weak_level;
}

std::vector<Task> PassesDue::on_day(const RecallsDue& recalls, const TaskMaker& make, int day,
                                    double room, int times, double gaps) const {
  std::vector<const Span*> due;
  for (const Span& span : spans_)
    if (std::min(span.slow, span.counted) < times && recalls.ripe_enough(span.bars, day, gaps))
      due.push_back(&span);
  std::stable_sort(due.begin(), due.end(),
                   [](const Span* a, const Span* b) { return a->turns() < b->turns(); });
  std::vector<Task> tasks;
  for (const Span* span : due) {
    const Drill drill = span->slow <= span->counted ? Drill::slow_pass : Drill::counted_pass;
    if (make.minutes(drill, span->bars) > room) continue;
    tasks.push_back(make.of_bars(drill, span->bars));
    tasks.back().reason = Reason::whole;
  }
  return tasks;
}

void PassesDue::played(const Task& task) {
  if (task.drill != Drill::slow_pass && task.drill != Drill::counted_pass) return;
  for (Span& span : spans_)
    if (task.bars.contains(span.bars))
      ++(task.drill == Drill::slow_pass ? span.slow : span.counted);
}

}  // namespace cahier
