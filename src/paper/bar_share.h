// How bars of different lengths share the width of a system.
#pragma once

#include <vector>

#include "paper/staff_system.h"

namespace cahier {

// The most frequent length, the longest of several as frequent; 1 when there is none.
double usual_length(const std::vector<StaffBar>& bars);

// The width of a bar to that of a usual one: as their lengths, but at least half, so that a short
// bar (a pickup, for instance) can still be written in.
double bar_share(const StaffBar& bar, double usual);

}  // namespace cahier
