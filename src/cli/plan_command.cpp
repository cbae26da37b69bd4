#include "cli/commands.h"
#include "cli/find_plan.h"
#include "cli/inputs.h"
#include "cli/say.h"
#include "cli/waiting_line.h"
#include "plan/search/sensitivity.h"
#include "plan/standing.h"
#include "report/plan_json.h"
#include "report/plan_text.h"
#include "report/traps_text.h"

namespace cahier {

int show_plan(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  say_all(inputs.warnings);
  FoundPlan found = find_plan(inputs, today);
  say_err(found.warnings);
  Plan& plan = found.plan;
  if (plan.fits && has_new_bars(plan)) {
    WaitingLine waiting(inputs.words, "waiting.sensitivity");
    Effort effort(kMostEffort, &waiting);
    plan.sensitivity = sensitivity(inputs.pieces, inputs.terms, effort);
  }
  if (request.json)
    say_out(plan_json(plan));
  else
    say_text(plan_text(plan, inputs.words, request.why, request.spacing) +
             (request.traps ? traps_text(plan, inputs.words) : ""));
  return plan.fits ? 0 : 1;
}

}  // namespace cahier
