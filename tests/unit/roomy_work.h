// Random pieces with at least six weeks, and so many times the minutes that they need.
#pragma once

#include <cmath>
#include <optional>
#include <vector>

#include "plan/search/planner.h"
#include "random_work.h"
#include "sample_plan.h"

namespace cahier::sample {

constexpr int kFewestBars = 20;  // a shorter piece hardly needs six weeks

struct RoomyWork {
  std::vector<Piece> pieces;
  Terms terms;
};

inline Terms terms_with(Wishes wishes, Date from, Date by, double minutes) {
  wishes.minutes.emplace();
  wishes.minutes->fill(minutes);
  return settle(from, by, wishes, steady());
}

// With `slack` times the least minutes a day that fit, found in steps of about a quarter; nothing
// where an hour a day is not enough, or a piece is very short.
inline std::optional<RoomyWork> roomy_work(unsigned seed, double slack, int most_bars = 120) {
  RandomWork random(seed);
  RoomyWork made{random.pieces(most_bars), {}};
  for (const Piece& piece : made.pieces)
    if (piece.bars < kFewestBars) return std::nullopt;
  const Date from = date("2027-01-04");
  const Date by = from + days{random.number(42, 120)};
  Wishes wishes;
  if (random.one_in(3)) {
    wishes.days_off.emplace();
    wishes.days_off->weekdays[random.number(0, 6)] = true;
  }
  for (const double minutes : {5, 6, 8, 10, 13, 16, 20, 25, 32, 40, 50, 60}) {
    made.terms = terms_with(wishes, from, by, minutes);
    if (!plan_that_fits(made.pieces, made.terms)) continue;
    made.terms = terms_with(wishes, from, by, std::round(minutes * slack));
    return made;
  }
  return std::nullopt;
}

}  // namespace cahier::sample
