// Which rows of the panels rest on a day that may be missed.
#pragma once

#include <set>

#include "plan/plan.h"

namespace cahier {

// The tasks that take for learned, before any other does, what this workbook sets to be learned on
// an earlier day: usually the first recall of a chunk. What was learned before the workbook and
// what is new on the same panel is no risk. REQUIRES: the plan outlives them.
std::set<const Task*> first_uses(const Plan& plan);

}  // namespace cahier
