// The plan of the inputs, and where it does not fit, what would make it fit.
#pragma once

#include <string>

#include "cli/inputs.h"
#include "plan/plan.h"

namespace cahier {

// Where a search that takes long is waited for.
enum class Waiting { on_terminal, out_of_sight };

struct FoundPlan {
  Plan plan;
  std::string warnings;  // that a search ended at its limit; for standard error
};

FoundPlan find_plan(const Inputs& inputs, Date today, Waiting waiting = Waiting::on_terminal);

}  // namespace cahier
