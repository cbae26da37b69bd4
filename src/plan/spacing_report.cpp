#include "plan/spacing_report.h"

#include <algorithm>

#include "plan/spacing.h"

namespace cahier {
namespace {

// Days of recall by piece and chunk, each day once.
std::vector<std::vector<std::vector<Date>>> recall_days(const Plan& plan) {
  std::vector<std::vector<std::vector<Date>>> found;
  for (const PlannedPiece& piece : plan.pieces) found.emplace_back(piece.chunks.size());
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (!retrieves(task.drill)) continue;
      for (const int chunk : task.chunks) {
        auto& of_chunk = found[task.piece][chunk];
        if (of_chunk.empty() || of_chunk.back() != day.date) of_chunk.push_back(day.date);
      }
    }
  return found;
}

bool practice_between(const Plan& plan, Date after, Date until) {
  return std::any_of(plan.days.begin(), plan.days.end(), [&](const Day& day) {
    return day.allowance > 0 && day.date > after && day.date <= until;
  });
}

std::vector<Date> ideal_days(const Plan& plan, Date first) {
  std::vector<Date> ideal;
  for (Date day = first; day < plan.by;
       day += days{best_gap_days(plan.method, static_cast<int>((plan.by - day).count()))})
    ideal.push_back(day);
  return ideal;
}

}  // namespace

SpacingReport spacing_report(const Plan& plan) {
  SpacingReport report;
  int near = 0;
  int gaps = 0;
  const auto recalls = recall_days(plan);
  for (int piece = 0; piece < static_cast<int>(recalls.size()); ++piece)
    for (int chunk = 0; chunk < static_cast<int>(recalls[piece].size()); ++chunk) {
      ChunkSpacing line{piece, chunk, recalls[piece][chunk], {}, 0, 0};
      if (line.recalls.empty()) continue;
      line.ideal = ideal_days(plan, line.recalls.front());
      for (std::size_t i = 1; i < line.recalls.size(); ++i) {
        const Date last = line.recalls[i - 1];
        const double best = best_gap(plan.method, static_cast<double>((plan.by - last).count()));
        const auto gap = static_cast<double>((line.recalls[i] - last).count());
        const bool is_near = gap >= best / 2 && gap <= best * 2;
        line.near += is_near ? 1 : 0;
        ++line.gaps;
        if (gap > best * 2 &&
            !practice_between(plan, last, last + days{static_cast<int>(best * 2)}))
          ++report.forced_by_days_off;
      }
      near += line.near;
      gaps += line.gaps;
      report.chunks.push_back(std::move(line));
    }
  if (gaps > 0) report.near_share = static_cast<double>(near) / gaps;
  return report;
}

}  // namespace cahier
