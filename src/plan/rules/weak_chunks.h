// How weak the record makes a chunk. The counts are the history's; what they mean is decided here
// anew, so that a fault in the planner's own decision cannot hide itself.
#pragma once

#include <vector>

#include "plan/rules/indexed_plan.h"

namespace cahier {

// By chunk of one piece.
std::vector<Weakness> weak_chunks(const Plan& plan, int piece);

}  // namespace cahier
