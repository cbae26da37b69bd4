#include <algorithm>

#include "cli/commands.h"
#include "cli/find_plan.h"
#include "cli/inputs.h"
#include "cli/say.h"
#include "cli/waiting_line.h"
#include "plan/search/sensitivity.h"
#include "report/plan_json.h"
#include "report/plan_text.h"

namespace cahier {
namespace {

bool has_new_bars(const Plan& plan) {
  return std::any_of(plan.days.begin(), plan.days.end(), [](const Day& day) {
    return std::any_of(day.tasks.begin(), day.tasks.end(),
                       [](const Task& task) { return task.drill == Drill::learn; });
  });
}

}  // namespace

int show_plan(const Request& request, const TypedLine& typed, Date today) {
  const Inputs inputs = read_inputs(request, typed, today);
  say_all(inputs.warnings);
  Plan plan = find_plan(inputs, today);
  if (plan.fits && has_new_bars(plan)) {
    WaitingLine waiting(inputs.words, "waiting.sensitivity");
    Effort effort(kMostEffort, &waiting);
    plan.sensitivity = sensitivity(inputs.pieces, inputs.terms, effort);
  }
  if (request.json)
    say_out(plan_json(plan));
  else
    say_text(plan_text(plan, inputs.words, request.why, request.spacing));
  return plan.fits ? 0 : 1;
}

}  // namespace cahier
