#include "cli/find_plan.h"

#include <fmt/format.h>

#include "cli/waiting_line.h"
#include "plan/search/planner.h"
#include "plan/search/remedies.h"

namespace cahier {
namespace {

constexpr double kRemedyEffort = 2 * kMostEffort / 3;  // for all of them

constexpr int kNoStream = -1;

std::string ended(const std::string& search, double effort, const std::string& what_may_be) {
  return fmt::format(
      "warning: the search for {} ended at its limit, {:.0f} million chunks times days; "
      "{}\n",
      search, effort / 1e6, what_may_be);
}

}  // namespace

FoundPlan find_plan(const Inputs& inputs, Date today, Waiting shown) {
  const int stream = shown == Waiting::on_terminal ? STDERR_FILENO : kNoStream;
  bool plan_ended = false;
  bool remedies_ended = false;
  FoundPlan found;
  Plan& plan = found.plan;
  {
    WaitingLine waiting(inputs.words, "waiting.plan", stream);
    Effort effort(kMostEffort, &waiting);
    plan = make_plan(inputs.pieces, inputs.terms, effort);
    plan_ended = effort.used_up();
  }
  plan.programme = inputs.programme;
  if (plan.fits) return found;
  {
    WaitingLine waiting(inputs.words, "waiting.remedies", stream);
    Effort effort(kRemedyEffort, &waiting);
    plan.remedies =
        remedies(inputs.pieces, inputs.terms, earliest_start(inputs.terms, today), effort);
    remedies_ended = effort.used_up();
  }
  if (plan_ended)
    found.warnings += ended("a plan", kMostEffort, "one that fits may exist all the same");
  if (remedies_ended)
    found.warnings += ended("remedies", kRemedyEffort, "there may be others, or lesser ones");
  return found;
}

}  // namespace cahier
