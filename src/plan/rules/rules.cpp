#include "plan/rules/rules.h"

#include <utility>

#include "plan/rules/indexed_plan.h"

namespace cahier {

std::vector<Breach> breaches(const Plan& plan) {
  Judgement judgement{plan};
  if (plan.fits != plan.unplaced.empty())
    judgement.breach(10, plan.fits ? "the plan says that it fits, yet leaves work unplaced"
                                   : "the plan says that it does not fit, yet all is placed");
  if (!check_form(judgement)) return std::move(judgement.found);
  index_pieces(judgement);
  check_chunks(judgement);
  check_learning(judgement);
  check_calendar(judgement);
  check_steps(judgement);
  check_covered(judgement);
  check_joins(judgement);
  check_recalls(judgement);
  check_runs(judgement);
  check_cues(judgement);
  check_look_alikes(judgement);
  check_temper(judgement);
  return std::move(judgement.found);
}

}  // namespace cahier
