#include "plan/quality/quality.h"

#include <array>
#include <cstddef>
#include <optional>
#include <utility>

#include "plan/quality/each_figure.h"
#include "text/rows.h"

namespace cahier {
namespace {

struct Row {
  FigureKind kind;
  std::string_view word;
  figures::Figure (*of)(const PlacedPlan&);
};

constexpr std::optional<Row> row_of(FigureKind kind) {
  switch (kind) {
    case FigureKind::first_run_through:
      return Row{kind, "first_run_through", figures::first_run_through};
    case FigureKind::between_run_throughs:
      return Row{kind, "between_run_throughs", figures::between_run_throughs};
    case FigureKind::not_at_the_end:
      return Row{kind, "not_at_the_end", figures::not_at_the_end};
    case FigureKind::growing_stretches:
      return Row{kind, "growing_stretches", figures::growing_stretches};
    case FigureKind::seams:
      return Row{kind, "seams", figures::seams};
    case FigureKind::passes:
      return Row{kind, "passes", figures::passes};
    case FigureKind::forks:
      return Row{kind, "forks", figures::forks};
    case FigureKind::spoken_and_written:
      return Row{kind, "spoken_and_written", figures::spoken_and_written};
    case FigureKind::phrases:
      return Row{kind, "phrases", figures::phrases};
    case FigureKind::use_of_time:
      return Row{kind, "use_of_time", figures::use_of_time};
    case FigureKind::spread:
      return Row{kind, "spread", figures::spread};
    case FigureKind::criterion:
      return Row{kind, "criterion", figures::criterion};
    case FigureKind::hard_bars:
      return Row{kind, "hard_bars", figures::hard_bars};
    case FigureKind::tempo:
      return Row{kind, "tempo", figures::tempo};
    case FigureKind::order:
      return Row{kind, "order", figures::order};
    case FigureKind::spacing:
      return Row{kind, "spacing", figures::spacing};
  }
  return std::nullopt;
}

constexpr auto kRows = rows<FigureKind, row_of>();

constexpr auto kEvery = [] {
  std::array<FigureKind, kRows.size()> kinds{};
  for (std::size_t at = 0; at < kRows.size(); ++at) kinds[at] = kRows[at].kind;
  return kinds;
}();

}  // namespace

std::span<const FigureKind> every_figure() { return kEvery; }

std::string_view figure_word(FigureKind kind) { return kRows[static_cast<std::size_t>(kind)].word; }

std::vector<QualityFigure> quality(const Plan& plan) {
  const PlacedPlan placed = place_tasks(plan);
  std::vector<QualityFigure> found;
  for (const Row& row : kRows)
    if (figures::Figure figure = row.of(placed)) found.push_back(std::move(*figure));
  return found;
}

}  // namespace cahier
