// What becomes of a plan when learning takes longer than planned.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "plan/schedule/effort.h"
#include "plan/terms.h"

namespace cahier {

// For learning that takes 1.25 and 1.5 times as long as the method says, everything else alike:
// whether the work still fits before the date, or by how many days the date would have to be later.
// The chunks stay the same. Each answer comes from the planner; those that it has no effort left
// for are left out.
// REQUIRES: the work fits as it is.
std::vector<Sensitivity> sensitivity(const std::vector<Piece>& pieces, const Terms& terms);
std::vector<Sensitivity> sensitivity(const std::vector<Piece>& pieces, const Terms& terms,
                                     Effort& effort);

}  // namespace cahier
