// Figure 19: the gaps between recalls are near the best, however often more is played between.
//
// Of each chunk the sub-sequence of its recalls counts that has the fewest gaps off the best ones:
// from its first recall to one after which the date lies within rule 5, without a gap past rule 5
// but where two recalls leave one. A gap is near within half to twice the best for the days left,
// both included. A gap that ends on the very next practice day is made too long by days off alone:
// it counts neither way, as do gaps that are past.
#include <algorithm>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/best_gap.h"

namespace cahier::figures {
namespace {

constexpr int kDaysLeft = 21;
constexpr double kShare = 0.95;

// Of a way through the recalls.
struct Count {
  int off = 0;
  int near = 0;
  int too_long = 0;

  // Fewer too long ones first, then fewer that are off, then more that are near.
  bool operator<(const Count& other) const {
    if (too_long != other.too_long) return too_long < other.too_long;
    if (off != other.off) return off < other.off;
    return near > other.near;
  }
};

class Gaps {
 public:
  explicit Gaps(const Plan& plan) : plan_(plan) {
    for (const Day& day : plan.days)
      if (day.allowance > 0) practice_.push_back(day.date);
  }

  // The best way through the recalls of a chunk; REQUIRES at least one, in order.
  Count best(const std::vector<Date>& recalls) const {
    std::vector<Count> to(recalls.size());
    for (std::size_t second = 1; second < recalls.size(); ++second)
      for (std::size_t back = 1; back <= second; ++back) {
        const std::size_t first = second - back;
        const Count with = after(to[first], recalls[first], recalls[second]);
        if (back == 1 || with < to[second]) to[second] = with;
        if (is_past_limit(recalls[first], recalls[second])) break;
      }
    Count best = to.back();
    if (is_past_limit(recalls.back(), plan_.by)) ++best.too_long;
    for (std::size_t at = 0; at + 1 < recalls.size(); ++at)
      if (!is_past_limit(recalls[at], plan_.by) && to[at] < best) best = to[at];
    return best;
  }

 private:
  Count after(Count count, Date first, Date second) const {
    if (second < plan_.from) return count;
    const double best = best_gap(plan_.method, static_cast<double>((plan_.by - first).count()));
    const auto gap = static_cast<double>((second - first).count());
    if (gap >= best / 2 && gap <= best * 2)
      ++count.near;
    else if (gap < best || !is_next_practice_day(first, second))
      ++count.off;
    if (is_past_limit(first, second)) ++count.too_long;
    return count;
  }

  // What is overdue when an edition begins may come back within its first week (rule 5).
  bool is_past_limit(Date first, Date second) const {
    const int left = static_cast<int>((plan_.by - first).count());
    Date limit = first + days{longest_gap_days(plan_.method, left)};
    if (limit < plan_.from) limit = plan_.from + days{6};
    return second >= plan_.from && second > limit &&
           !is_next_practice_day(std::max(first, plan_.from - days{1}), second);
  }

  bool is_next_practice_day(Date first, Date second) const {
    const auto next = std::ranges::upper_bound(practice_, first);
    return next == practice_.end() || *next >= second;
  }

  const Plan& plan_;
  std::vector<Date> practice_;
};

// By chunk.
std::vector<std::vector<Date>> recalls_of(const PlacedPiece& piece) {
  std::vector<std::vector<Date>> found(piece.learned.size());
  for (const PlacedTask& one : piece.tasks) {
    if (!retrieves(one.task->drill)) continue;
    for (const int chunk : one.task->chunks)
      if (piece.learned[chunk] && one.date > piece.learned[chunk]->date &&
          (found[chunk].empty() || found[chunk].back() != one.date))
        found[chunk].push_back(one.date);
  }
  return found;
}

}  // namespace

Figure spacing(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::spacing);
  const Gaps gaps(*placed.plan);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(kDaysLeft)) continue;
    const std::vector<std::vector<Date>> recalls = recalls_of(piece);
    Count sum;
    std::vector<BarRange> long_waits;
    for (std::size_t chunk = 0; chunk < recalls.size(); ++chunk) {
      if (recalls[chunk].empty()) continue;
      const Count best = gaps.best(recalls[chunk]);
      sum.near += best.near;
      sum.off += best.off;
      if (best.too_long > 0) long_waits.push_back(piece.planned->chunks[chunk].bars);
    }
    if (!figure.at_most(static_cast<double>(long_waits.size()), 0))
      figure.lacks(
          {.lack = Lack::gap_too_long, .piece = piece.index, .bars = put_together(long_waits)});
    if (sum.near + sum.off == 0) continue;
    const double share = static_cast<double>(sum.near) / (sum.near + sum.off);
    if (!figure.at_least(share, kShare))
      figure.lacks({.lack = Lack::gaps_off,
                    .piece = piece.index,
                    .found = 100 * share,
                    .wanted = 100 * kShare});
  }
  return figure.take();
}

}  // namespace cahier::figures
