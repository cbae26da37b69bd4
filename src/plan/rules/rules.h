// The judge of a plan: looks only at the plan and the piece, and trusts nothing of the scheduler.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"

namespace cahier {

struct Breach {
  int rule;  // 1 … 10, as numbered in DEVELOPERS.md; 0 when the plan contradicts its own form
  std::string what;  // in words, with dates and bars
};

// Every breach of the rules a plan must satisfy; empty for a sound plan. For a plan that does not
// fit, only what is placed is judged (no bar learned twice, no day over its allowance, …), and
// that `unplaced` names what is not. A plan whose form is broken (an index or a bar that does not
// exist) is judged no further.
std::vector<Breach> breaches(const Plan& plan);

}  // namespace cahier
