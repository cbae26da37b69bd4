// What no plan can do without: a test of whether work could fit at all, apart from the planner.
#pragma once

#include <vector>

#include "plan/terms.h"

namespace cahier {

// False when there is certainly no plan that fits: the minutes that must be spent, however the
// piece is cut, are more than the days hold. True says nothing.
bool could_fit(const std::vector<Piece>& pieces, const Terms& terms);

}  // namespace cahier
