#include "plan/search/better_plan.h"

#include <algorithm>

namespace cahier {
namespace {

constexpr FigureKind kOrder[] = {
    FigureKind::first_run_through,
    FigureKind::between_run_throughs,
    FigureKind::not_at_the_end,
    FigureKind::spread,
    FigureKind::seams,
    FigureKind::growing_stretches,
    FigureKind::forks,
    FigureKind::passes,
    FigureKind::criterion,
    FigureKind::spacing,
    FigureKind::tempo,
    FigureKind::phrases,
    FigureKind::order,
    FigureKind::spoken_and_written,
};

bool meets(const std::vector<QualityFigure>& figures, FigureKind kind) {
  return std::any_of(figures.begin(), figures.end(), [&](const QualityFigure& figure) {
    return figure.name == kind && figure.met;
  });
}

}  // namespace

bool is_better(const std::vector<QualityFigure>& one, const std::vector<QualityFigure>& other) {
  for (const FigureKind kind : kOrder)
    if (meets(one, kind) != meets(other, kind)) return meets(one, kind);
  return false;
}

}  // namespace cahier
