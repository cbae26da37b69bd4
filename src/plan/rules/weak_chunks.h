// How weak the record makes a chunk. The counts are the history's; what they mean is decided here
// anew, so that a fault in the planner's own decision cannot hide itself.
#pragma once

#include <vector>

#include "plan/rules/indexed_plan.h"

namespace cahier {

// By chunk of one piece.
std::vector<Weakness> weak_chunks(const Plan& plan, int piece);

// How many times the share of a start that does not slip one has that leads into a weak chunk.
inline constexpr int kWeakShare = 2;

}  // namespace cahier
