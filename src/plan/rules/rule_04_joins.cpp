// Rule 4: neighbouring chunks are played across their join after both are learned.
#include <fmt/format.h>

#include <algorithm>
#include <numeric>
#include <utility>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

bool plays_across(Drill drill) {
  return drill == Drill::join || drill == Drill::recall || drill == Drill::slow_pass ||
         drill == Drill::counted_pass;
}

// Boundaries are named by the bar before them. A boundary inside one return is the boundary its
// source has, followed until it lies in no return or at the edge of one.
int source_of(const IndexedPiece& piece, int bar) {
  for (std::size_t follow = 0; follow <= piece.planned->sections.size(); ++follow) {
    const PlannedSection& section = piece.planned->sections[piece.section_at[bar]];
    if (!section.same_as || bar + 1 > section.bars.last) break;
    bar = section.same_as->first + bar - section.bars.first;
  }
  return bar;
}

// The latest moment at which a task plays across each boundary. Tasks are taken from the last to
// the first, and a boundary once met is skipped for good, so the work is close to linear.
class LastPlayed {
 public:
  explicit LastPlayed(int bars) : moments_(bars + 1), next_(bars + 2) {
    std::iota(next_.begin(), next_.end(), 0);
  }

  void play(const BarRange& bars, const Moment& moment) {
    for (int bar = open_from(bars.first); bar < bars.last; bar = open_from(bar)) {
      moments_[bar] = moment;
      next_[bar] = bar + 1;
    }
  }

  const Moment& at(int bar) const { return moments_[bar]; }

 private:
  int open_from(int bar) {
    int open = bar;
    while (next_[open] != open) open = next_[open];
    while (next_[bar] != open && bar != open) bar = std::exchange(next_[bar], open);
    return open;
  }

  std::vector<Moment> moments_;
  std::vector<int> next_;  // the first boundary from here on that is not yet met
};

std::vector<LastPlayed> last_played(const IndexedPlan& indexed) {
  std::vector<LastPlayed> played;
  for (const IndexedPiece& piece : indexed.pieces) played.emplace_back(piece.planned->piece.bars);
  for (int day = indexed.day_count() - 1; day >= 0; --day) {
    const auto& tasks = indexed.days[day]->tasks;
    for (int number = static_cast<int>(tasks.size()) - 1; number >= 0; --number)
      if (plays_across(tasks[number].drill))
        played[tasks[number].piece].play(tasks[number].bars, {day, number});
  }
  return played;
}

void check_piece(IndexedPlan& indexed, const IndexedPiece& piece, const LastPlayed& played) {
  const BarRange whole = piece.planned->piece.whole();
  std::vector<Moment> met(static_cast<std::size_t>(whole.last) + 1);
  for (int bar = whole.first; bar < whole.last; ++bar) {
    Moment& source = met[source_of(piece, bar)];
    source = std::max(source, played.at(bar));
  }
  for (std::size_t at = 1; at < piece.occurrences.size(); ++at) {
    const Occurrence& before = piece.occurrences[at - 1];
    const Occurrence& after = piece.occurrences[at];
    if (before.chunk < 0 || after.chunk < 0) continue;
    const auto& one = piece.learned[before.chunk];
    const auto& other = piece.learned[after.chunk];
    if (!one || !other) continue;
    if (met[source_of(piece, before.bars.last)] > std::max(*one, *other)) continue;
    indexed.violation(4, Kind::join_not_played,
                      fmt::format("the join of bars {} and {} (chunks {} and {}) is not played "
                                  "after both are learned",
                                  before.bars.last, after.bars.first,
                                  piece.chunks()[before.chunk].id, piece.chunks()[after.chunk].id));
  }
}

}  // namespace

void check_joins(IndexedPlan& indexed) {
  if (!indexed.plan.fits) return;
  const std::vector<LastPlayed> played = last_played(indexed);
  for (std::size_t piece = 0; piece < indexed.pieces.size(); ++piece)
    check_piece(indexed, indexed.pieces[piece], played[piece]);
}

}  // namespace cahier
