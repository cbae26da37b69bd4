#include "plan/search/sensitivity.h"

#include "plan/search/least_step.h"
#include "plan/search/levers.h"
#include "plan/search/planner.h"
#include "practice/numbers.h"

namespace cahier {

std::vector<Sensitivity> sensitivity(const std::vector<Piece>& pieces, const Terms& terms) {
  Effort effort;
  return sensitivity(pieces, terms, effort);
}

std::vector<Sensitivity> sensitivity(const std::vector<Piece>& pieces, const Terms& terms,
                                     Effort& effort) {
  std::vector<Sensitivity> found;
  for (const double learning : {1.25, 1.5}) {
    Terms longer = terms;
    longer.method.learn_factor = learning;
    const auto fits = [&](int days_late) {
      Terms later = longer;
      later.by += days{days_late};
      return plan_that_fits(pieces, later, effort).has_value();
    };
    const auto late = fits(0) ? 0 : least_step(numbers::kMostDaysMoved, date_ripple(terms), fits);
    if (effort.used_up()) break;
    found.push_back({learning, late});
  }
  return found;
}

}  // namespace cahier
