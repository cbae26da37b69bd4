#include "workbook/parts/totals.h"

#include <algorithm>

#include "plan/standing.h"

namespace cahier {

Totals totals_of(const Plan& plan) {
  Totals totals;
  for (const PlannedPiece& piece : plan.pieces) {
    totals.chunks += static_cast<int>(piece.chunks.size());
    totals.cues += static_cast<int>(piece.cues.size());
  }
  for (std::size_t piece = 0; piece < plan.pieces.size(); ++piece)
    for (const std::optional<Date>& date : learned_before(plan, static_cast<int>(piece))) {
      if (date) ++totals.learned_before;
      totals.learned = std::max(totals.learned, date);
    }
  for (const Day& day : plan.days) {
    if (day.allowance > 0) {
      totals.least_day =
          totals.practice_days == 0 ? day.allowance : std::min(totals.least_day, day.allowance);
      totals.most_day = std::max(totals.most_day, day.allowance);
      ++totals.practice_days;
      totals.spare_minutes += std::max(0.0, day.allowance - day.minutes());
    }
    if (!day.tasks.empty()) ++totals.days_with_work;
    if (day.note == DayNote::catch_up) ++totals.catch_up_days;
    for (const Task& task : day.tasks) {
      if (task.drill == Drill::run_through)
        totals.runs += task.steps.empty() ? 1 : task.steps.front().times;
      if (task.drill != Drill::learn) continue;
      ++totals.learned_chunks;
      totals.learn_minutes += task.minutes;
      totals.learned = day.date;
    }
  }
  return totals;
}

bool asks_for(const Plan& plan, int piece, Drill drill) {
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == drill) return true;
  return false;
}

bool asks_for(const Plan& plan, Drill drill) {
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    if (asks_for(plan, piece, drill)) return true;
  return false;
}

}  // namespace cahier
