#include "plan/near_gaps.h"

#include <algorithm>

#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// Fewer too long ones first, then fewer that are off, then more that are near.
bool is_better(const GapCount& one, const GapCount& other) {
  if (one.too_long != other.too_long) return one.too_long < other.too_long;
  if (one.off != other.off) return one.off < other.off;
  return one.near > other.near;
}

}  // namespace

NearGaps::NearGaps(const Plan& plan) : plan_(plan) {
  for (const Day& day : plan.days)
    if (day.allowance > 0) practice_.push_back(day.date);
}

GapCount NearGaps::count(const std::vector<Date>& recalls) const {
  if (recalls.empty()) return {};
  std::vector<GapCount> to(recalls.size());
  for (std::size_t second = 1; second < recalls.size(); ++second)
    for (std::size_t back = 1; back <= second; ++back) {
      const std::size_t first = second - back;
      const GapCount with = after(to[first], recalls[first], recalls[second]);
      if (back == 1 || is_better(with, to[second])) to[second] = with;
      if (is_past_limit(recalls[first], recalls[second])) break;
    }
  GapCount best = to.back();
  if (is_past_limit(recalls.back(), plan_.by)) ++best.too_long;
  for (std::size_t at = 0; at + 1 < recalls.size(); ++at)
    if (!is_past_limit(recalls[at], plan_.by) && is_better(to[at], best)) best = to[at];
  return best;
}

GapCount NearGaps::after(GapCount count, Date first, Date second) const {
  if (second < plan_.from) return count;
  const double best = best_gap(plan_.method, static_cast<double>((plan_.by - first).count()));
  const auto gap = static_cast<double>((second - first).count());
  if (gap >= best / 2 && gap <= best * 2)
    ++count.near;
  else if (gap > best && is_next_practice_day(first, second))
    ++count.forced;
  else
    ++count.off;
  if (is_past_limit(first, second)) ++count.too_long;
  return count;
}

// What is overdue when an edition begins may come back within its first week (rule 5).
bool NearGaps::is_past_limit(Date first, Date second) const {
  const int left = static_cast<int>((plan_.by - first).count());
  Date limit = first + days{longest_gap_days(plan_.method, left)};
  if (limit < plan_.from) limit = plan_.from + days{numbers::kOverdueWeek - 1};
  return second >= plan_.from && second > limit &&
         !is_next_practice_day(std::max(first, plan_.from - days{1}), second);
}

bool NearGaps::is_next_practice_day(Date first, Date second) const {
  const auto next = std::ranges::upper_bound(practice_, first);
  return next == practice_.end() || *next >= second;
}

}  // namespace cahier
