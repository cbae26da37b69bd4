// A figure while it is measured, over all pieces.
#pragma once

#include <optional>
#include <utility>

#include "plan/quality/quality_figure.h"

namespace cahier {

class FigureBuilder {
 public:
  explicit FigureBuilder(FigureKind name) { made_.name = name; }

  // One condition of one piece; returns whether it holds. A figure that holds says nothing.
  bool measure(double figure, Wanted wanted);
  bool at_most(double figure, double most) { return measure(figure, {{}, most}); }
  bool at_least(double figure, double least) { return measure(figure, {least, {}}); }
  // `good` of `all` are as they should be, and all should be; no condition where there is none.
  bool all_of(int good, int all) {
    return all == 0 || at_least(static_cast<double>(good) / all, 1);
  }

  // Why a condition does not hold. Bars that lack the same are put together.
  void lacks(Shortfall shortfall);

  // Nothing where nothing was measured.
  std::optional<QualityFigure> take();

 private:
  QualityFigure made_;
  bool measured_ = false;
};

}  // namespace cahier
