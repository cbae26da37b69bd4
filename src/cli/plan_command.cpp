#include <fmt/format.h>

#include "cli/commands.h"
#include "cli/inputs.h"
#include "cli/say.h"
#include "plan/search/planner.h"
#include "plan/search/remedies.h"
#include "plan/search/sensitivity.h"
#include "report/plan_json.h"
#include "report/plan_text.h"

namespace cahier {

int show_plan(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  say_all(inputs.warnings);
  Plan plan = make_plan(inputs.pieces, inputs.terms);
  plan.programme = inputs.programme;
  if (plan.fits)
    plan.sensitivity = sensitivity(inputs.pieces, inputs.terms);
  else
    plan.remedies = remedies(inputs.pieces, inputs.terms, earliest_start(inputs.terms, today));
  if (request.json)
    say_out(plan_json(plan));
  else
    say_text(plan_text(plan, inputs.words, request.why, request.spacing));
  return plan.fits ? 0 : 1;
}

}  // namespace cahier
