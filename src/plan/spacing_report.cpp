#include "plan/spacing_report.h"

#include <algorithm>
#include <optional>

#include "plan/near_gaps.h"
#include "practice/best_gap.h"

namespace cahier {
namespace {

// When a chunk is learned, and the days of the plan after on which it is played from memory.
struct Kept {
  std::optional<Date> learned;
  std::vector<Date> recalls;
};

std::vector<std::vector<Kept>> kept_chunks(const Plan& plan) {
  std::vector<std::vector<Kept>> kept;
  for (const PlannedPiece& piece : plan.pieces) kept.emplace_back(piece.chunks.size());
  const auto add = [&](const Day& day) {
    for (const Task& task : day.tasks)
      for (const int index : task.chunks) {
        Kept& chunk = kept[task.piece][index];
        if (task.drill == Drill::learn && !chunk.learned) chunk.learned = day.date;
        if (!retrieves(task.drill) || !chunk.learned || *chunk.learned == day.date) continue;
        if (day.date < plan.from) continue;
        if (chunk.recalls.empty() || chunk.recalls.back() != day.date)
          chunk.recalls.push_back(day.date);
      }
  };
  for (const Day& day : plan.past) add(day);
  for (const Day& day : plan.days) add(day);
  return kept;
}

class Calendar {
 public:
  explicit Calendar(const Plan& plan) : plan_(plan) {
    for (const Day& day : plan.days)
      if (day.allowance > 0) practice_.push_back(day.date);
  }

  std::vector<Date> ideal_days(Date first) const {
    std::vector<Date> ideal = {first};
    while (const auto next = ideal_after(ideal.back())) ideal.push_back(*next);
    return ideal;
  }

 private:
  // nullopt when the best gap reaches the date, or no practice day is left.
  std::optional<Date> ideal_after(Date last) const {
    const int left = static_cast<int>((plan_.by - last).count());
    const Date best = last + days{best_gap_days(plan_.method, left)};
    if (best >= plan_.by) return std::nullopt;
    const auto later = std::lower_bound(practice_.begin(), practice_.end(), best);
    const bool none_later = later == practice_.end();
    const bool none_earlier = later == practice_.begin() || *std::prev(later) <= last;
    if (none_later && none_earlier) return std::nullopt;
    if (none_earlier) return *later;
    const Date earlier = *std::prev(later);
    return none_later || best - earlier < *later - best ? earlier : *later;
  }

  const Plan& plan_;
  std::vector<Date> practice_;
};

}  // namespace

SpacingReport spacing_report(const Plan& plan) {
  SpacingReport report;
  const Calendar calendar(plan);
  const NearGaps near(plan);
  const auto add_chunk = [&](int piece, int chunk, const std::vector<Date>& recalls) {
    ChunkSpacing line{piece, chunk, recalls, {}, 0, 0};
    if (!recalls.empty()) line.ideal = calendar.ideal_days(recalls.front());
    const GapCount counted = near.count(recalls);
    line.near = counted.near;
    line.gaps = counted.near + counted.off + counted.forced;
    report.forced_by_days_off += counted.forced;
    report.near += line.near;
    report.gaps += line.gaps;
    report.chunks.push_back(std::move(line));
  };
  const auto kept = kept_chunks(plan);
  for (std::size_t piece = 0; piece < kept.size(); ++piece)
    for (std::size_t chunk = 0; chunk < kept[piece].size(); ++chunk)
      if (kept[piece][chunk].learned)
        add_chunk(static_cast<int>(piece), static_cast<int>(chunk), kept[piece][chunk].recalls);
  return report;
}

}  // namespace cahier
