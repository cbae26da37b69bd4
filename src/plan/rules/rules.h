// The judge of a plan: looks only at the plan and the piece, and trusts nothing of the scheduler.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "plan/rules/violation.h"

namespace cahier {

// Every breach of the rules a plan must satisfy; empty for a sound plan. For a plan that does not
// fit, only what is placed is judged (no bar learned twice, no day over its allowance, …), and
// that `unplaced` names what is not. A plan whose form is broken (an index or a bar that does not
// exist) is judged no further.
std::vector<Violation> violations(const Plan& plan);

}  // namespace cahier
