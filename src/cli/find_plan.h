// The plan of the inputs, and where it does not fit, what would make it fit.
#pragma once

#include "cli/inputs.h"
#include "plan/plan.h"

namespace cahier {

// Where the search ended at its limit, that is said to standard error.
Plan find_plan(const Inputs& inputs, Date today);

}  // namespace cahier
