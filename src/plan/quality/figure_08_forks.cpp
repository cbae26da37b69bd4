// Figure 8: each way on at each fork is drilled again and again.
//
// Choices: a way on is drilled by a fork drill that has it among its ways, from a start at most a
// chunk's length before the fork, or on it (of what was done before, by any such start: a log does
// not tell fork drills from others). Days count once; they grow where three of them, the last
// within 14 days of the date, lie each farther from the one before than that from its own. With 21
// to 27 days left one drill within the last 14 days is enough.
#include <algorithm>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier {

namespace figures {
namespace {

std::vector<Date> drill_days(const PlacedPiece& piece, const WayOn& way) {
  const int nearest = way.at + 1 - piece.plan->method.chunk_most;
  const auto leads_there = [&](const BarRange& start) {
    return nearest <= start.first && start.first <= way.at + 1 && start.last >= way.at;
  };
  std::vector<Date> drilled;
  for (const PlacedTask& placed : piece.tasks) {
    const Task& task = *placed.task;
    if (task.drill != Drill::cue_starts) continue;
    const bool is_its_way =
        placed.past ||
        (task.fork && std::ranges::find(task.ways, PlayedWay{way.at, way.to}) != task.ways.end());
    if (is_its_way && std::ranges::any_of(task.from_starts, leads_there) &&
        (drilled.empty() || drilled.back() != placed.date))
      drilled.push_back(placed.date);
  }
  return drilled;
}

bool grow(const std::vector<Date>& drilled, Date last_from) {
  for (std::size_t third = 2; third < drilled.size(); ++third)
    for (std::size_t second = 1; drilled[third] >= last_from && second < third; ++second)
      // The nearest before leaves the shortest distance to grow from.
      if (drilled[third] - drilled[second] > drilled[second] - drilled[second - 1]) return true;
  return false;
}

// `wanted`: how many drills there should be.
std::optional<Lack> lack_of(const std::vector<Date>& drilled, Date last_from, int wanted) {
  if (static_cast<int>(drilled.size()) < wanted && wanted > 1) return Lack::fork_seldom;
  if (drilled.empty() || drilled.back() < last_from) return Lack::fork_early;
  if (wanted > 2 && !grow(drilled, last_from)) return Lack::fork_not_growing;
  return std::nullopt;
}

}  // namespace

Figure forks(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::forks);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    const Method& method = piece.method();
    const Date last_from = placed.plan->by - days{method.last_fork_days};
    const int wanted = piece.leaves(method.fork_drill_days) ? method.fork_drills : 1;
    int all = 0;
    int good = 0;
    for (const Fork& fork : piece.planned->forks)
      for (const WayOn& way : fork.ways) {
        ++all;
        const auto lack = lack_of(drill_days(piece, way), last_from, wanted);
        if (lack)
          figure.lacks({.lack = *lack, .piece = piece.index, .bars = {{way.to, way.to}}});
        else
          ++good;
      }
    figure.all_of(good, all);
  }
  return figure.take();
}

}  // namespace figures
}  // namespace cahier
