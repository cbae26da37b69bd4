#include "plan/quality/figure_builder.h"

#include <algorithm>

namespace cahier {

bool FigureBuilder::measure(double figure, Wanted wanted) {
  if (!measured_ || wanted.shortness(figure) > made_.wanted.shortness(made_.figure)) {
    made_.figure = figure;
    made_.wanted = wanted;
  }
  measured_ = true;
  const bool holds = wanted.holds(figure);
  made_.met = made_.met && holds;
  return holds;
}

void FigureBuilder::lacks(Shortfall shortfall) {
  const auto same = std::ranges::find_if(made_.why, [&](const Shortfall& one) {
    return one.lack == shortfall.lack && one.piece == shortfall.piece &&
           one.mend == shortfall.mend && one.dates.empty() && shortfall.dates.empty() &&
           !one.bars.empty() && !shortfall.bars.empty();
  });
  if (same == made_.why.end()) {
    made_.why.push_back(std::move(shortfall));
    return;
  }
  same->bars.insert(same->bars.end(), shortfall.bars.begin(), shortfall.bars.end());
  if (same->window && shortfall.window)
    same->window = {std::min(same->window->first, shortfall.window->first),
                    std::max(same->window->last, shortfall.window->last)};
}

std::optional<QualityFigure> FigureBuilder::take() {
  if (!measured_) return std::nullopt;
  return std::move(made_);
}

}  // namespace cahier
