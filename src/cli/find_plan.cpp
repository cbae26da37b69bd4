#include "cli/find_plan.h"

#include <fmt/format.h>

#include "cli/say.h"
#include "cli/waiting_line.h"
#include "plan/search/planner.h"
#include "plan/search/remedies.h"

namespace cahier {
namespace {

void say_ended(const std::string& search, const std::string& what_may_be) {
  say_err(fmt::format(
      "warning: the search for {} ended at its limit, {:.0f} million chunks times days; "
      "{}\n",
      search, kMostEffort / 1e6, what_may_be));
}

}  // namespace

Plan find_plan(const Inputs& inputs, Date today) {
  bool plan_ended = false;
  bool remedies_ended = false;
  Plan plan;
  {
    WaitingLine waiting(inputs.words, "plan");
    Effort effort(kMostEffort, &waiting);
    plan = make_plan(inputs.pieces, inputs.terms, effort);
    plan_ended = effort.used_up();
  }
  plan.programme = inputs.programme;
  if (plan.fits) return plan;
  {
    WaitingLine waiting(inputs.words, "remedies");
    Effort effort(kMostEffort, &waiting);
    plan.remedies =
        remedies(inputs.pieces, inputs.terms, earliest_start(inputs.terms, today), effort);
    remedies_ended = effort.used_up();
  }
  if (plan_ended) say_ended("a plan", "one that fits may exist all the same");
  if (remedies_ended) say_ended("remedies", "there may be others, or lesser ones");
  return plan;
}

}  // namespace cahier
