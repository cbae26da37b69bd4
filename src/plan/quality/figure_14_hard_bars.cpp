// Figure 14: hard bars come back sooner than easy ones.
//
// Gaps are those between the days on which a chunk is recalled, by whatever drill tests memory and
// plays all of it; gaps that are past are left out.
#include <algorithm>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

double median(std::vector<double> of) {
  std::ranges::sort(of);
  const std::size_t middle = of.size() / 2;
  return of.size() % 2 == 1 ? of[middle] : (of[middle - 1] + of[middle]) / 2;
}

}  // namespace

Figure hard_bars(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::hard_bars);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    std::vector<double> hard;
    std::vector<double> easy;
    std::vector<std::optional<Date>> last(piece.learned.size());
    for (const PlacedTask& one : piece.tasks) {
      if (!retrieves(one.task->drill)) continue;
      for (const int chunk : one.task->chunks) {
        if (!piece.learned[chunk] || one.date <= piece.learned[chunk]->date) continue;
        const int level = piece.planned->chunks[chunk].level;
        if (last[chunk] && *last[chunk] < one.date && !one.past) {
          const auto gap = static_cast<double>((one.date - *last[chunk]).count());
          if (level >= piece.method().weak_level) hard.push_back(gap);
          if (level <= numbers::kEasyLevel) easy.push_back(gap);
        }
        last[chunk] = one.date;
      }
    }
    if (hard.empty() || easy.empty()) continue;
    const double ratio = median(hard) / median(easy);
    if (!figure.at_most(ratio, numbers::kHardGapMost))
      figure.lacks({.lack = Lack::hard_bars_rest,
                    .piece = piece.index,
                    .found = 100 * ratio,
                    .wanted = 100 * numbers::kHardGapMost});
  }
  return figure.take();
}

}  // namespace cahier::figures
