// The checker of a plan: looks only at the plan, the piece and the record, and trusts nothing of
// the scheduler.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "plan/rules/violation.h"

namespace cahier {

// Every violation of the rules a plan must satisfy; none for a sound plan. For a plan that does not
// fit, only what is placed is checked (no bar learned twice, no day over its allowance, …), and
// that `unplaced` names what is not. A plan whose form is broken (an index or a bar that does not
// exist) is checked no further.
std::vector<Violation> violations(const Plan& plan);

}  // namespace cahier
