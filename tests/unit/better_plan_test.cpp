// Which of two plans is preferred, by the figures that they meet.
#include "plan/search/better_plan.h"

#include <algorithm>

#include "catch.h"

namespace cahier {
namespace {

using Kinds = std::vector<FigureKind>;

// What counts most first, as better_plan.h says.
const Kinds kByWeight = {FigureKind::first_run_through,
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
                         FigureKind::spoken_and_written};

// Figures of a plan that meets these and falls short of the others.
std::vector<QualityFigure> meeting(const Kinds& met) {
  std::vector<QualityFigure> figures;
  for (int number = 0; number <= static_cast<int>(FigureKind::spacing); ++number) {
    QualityFigure figure;
    figure.name = static_cast<FigureKind>(number);
    figure.met = std::find(met.begin(), met.end(), figure.name) != met.end();
    figures.push_back(figure);
  }
  return figures;
}

}  // namespace

TEST_CASE("the first figure that only one of two plans meets decides") {
  for (auto kind = kByWeight.begin(); kind != kByWeight.end(); ++kind) {
    CAPTURE(kind - kByWeight.begin());
    const auto one = meeting({*kind});
    const auto all_after = meeting(Kinds(kind + 1, kByWeight.end()));
    CHECK(is_better(one, all_after));
    CHECK_FALSE(is_better(all_after, one));
    // What both meet before it changes nothing.
    const auto up_to = meeting(Kinds(kByWeight.begin(), kind + 1));
    Kinds without(kByWeight);
    without.erase(without.begin() + (kind - kByWeight.begin()));
    CHECK(is_better(up_to, meeting(without)));
    CHECK_FALSE(is_better(meeting(without), up_to));
  }
}

TEST_CASE("of two plans that meet the same figures neither is better") {
  for (const Kinds& met : {Kinds{}, Kinds{FigureKind::seams}, kByWeight})
    CHECK_FALSE(is_better(meeting(met), meeting(met)));
}

TEST_CASE("how the days are used makes no plan better") {
  // Nor how often hard bars come back: that is no choice between drafts.
  for (const FigureKind kind : {FigureKind::use_of_time, FigureKind::hard_bars}) {
    CHECK_FALSE(is_better(meeting({kind}), meeting({})));
    CHECK_FALSE(is_better(meeting({}), meeting({kind})));
  }
}

TEST_CASE("a figure that does not hold for a plan is not met by it") {
  CHECK(is_better(meeting({FigureKind::seams}), {}));
  CHECK_FALSE(is_better({}, meeting({FigureKind::seams})));
}

}  // namespace cahier
