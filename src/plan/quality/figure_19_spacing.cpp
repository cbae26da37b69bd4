// Figure 19: the gaps between recalls are near the best, however often more is played between.
//
// Which gaps count stands in plan/near_gaps.h; those that days off alone make too long, and those
// that are past, count neither way.
#include <algorithm>

#include "plan/near_gaps.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

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
  const NearGaps gaps(*placed.plan);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    const std::vector<std::vector<Date>> recalls = recalls_of(piece);
    GapCount sum;
    std::vector<BarRange> long_waits;
    for (std::size_t chunk = 0; chunk < recalls.size(); ++chunk) {
      if (recalls[chunk].empty()) continue;
      const GapCount best = gaps.count(recalls[chunk]);
      sum.near += best.near;
      sum.off += best.off;
      if (best.too_long > 0) long_waits.push_back(piece.planned->chunks[chunk].bars);
    }
    if (!figure.at_most(static_cast<double>(long_waits.size()), 0))
      figure.lacks(
          {.lack = Lack::gap_too_long, .piece = piece.index, .bars = put_together(long_waits)});
    if (sum.near + sum.off == 0) continue;
    const double share = static_cast<double>(sum.near) / (sum.near + sum.off);
    if (!figure.at_least(share, numbers::kNearShare))
      figure.lacks({.lack = Lack::gaps_off,
                    .piece = piece.index,
                    .found = 100 * share,
                    .wanted = 100 * numbers::kNearShare});
  }
  return figure.take();
}

}  // namespace cahier::figures
