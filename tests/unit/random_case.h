// Random pieces with a calendar, for property tests of plans.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "plan/terms.h"
#include "random_work.h"
#include "sample_plan.h"

namespace cahier::sample {

struct RandomCase {
  std::vector<Piece> pieces;
  Terms terms;

  bool any_practice_day() const {
    const std::vector<Day> empty = calendar(terms);
    return std::any_of(empty.begin(), empty.end(),
                       [](const Day& day) { return day.allowance > 0; });
  }
};

inline RandomCase random_case(unsigned seed) {
  RandomWork random(seed);
  // Small pieces show as much as large ones, sooner.
  const int most_bars = random.one_in(20) ? 240 : random.one_in(3) ? 80 : 30;
  std::vector<Piece> pieces = random.pieces(most_bars);
  const Date from = date("2027-01-04") + days{random.number(0, 365)};
  const Wishes wishes = random.wishes(from);
  const Date by = from + days{random.days_to_go()};
  return {std::move(pieces), settle(from, by, wishes, steady())};
}

}  // namespace cahier::sample
