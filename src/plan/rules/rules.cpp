#include "plan/rules/rules.h"

#include <utility>

#include "plan/rules/each_rule.h"
#include "plan/rules/index_pieces.h"

namespace cahier {

std::vector<Violation> violations(const Plan& plan) {
  IndexedPlan indexed{plan};
  if (plan.fits != plan.unplaced.empty())
    indexed.violation(10, Violation::Kind::fits_and_unplaced,
                      plan.fits ? "the plan says that it fits, yet leaves work unplaced"
                                : "the plan says that it does not fit, yet all is placed");
  if (!check_form(indexed)) return std::move(indexed.found);
  index_pieces(indexed);
  check_past(indexed);
  check_weakness(indexed);
  check_chunks(indexed);
  check_learning(indexed);
  check_calendar(indexed);
  check_steps(indexed);
  check_covered(indexed);
  check_joins(indexed);
  check_recalls(indexed);
  check_runs(indexed);
  check_cues(indexed);
  check_look_alikes(indexed);
  check_temper(indexed);
  let_last_days_pass(indexed);
  return std::move(indexed.found);
}

}  // namespace cahier
