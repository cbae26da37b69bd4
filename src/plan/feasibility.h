// What would make a plan fit.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "plan/terms.h"

namespace cahier {

// Remedies for work that does not fit, the least demanding first; each was tried with the planner
// and gives a plan that fits: more minutes a day, an earlier start, a later date, no Temper, fewer
// repetitions. Empty when none helps.
std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms);

}  // namespace cahier
