// Keeping a learned piece between one performance and the next.
#pragma once

#include <optional>
#include <vector>

#include "plan/schedule/work.h"

namespace cahier {

// Lays upkeep on the calendar: sittings in which all of a piece is recalled, in turn from memory,
// slowly and counting, with cue starts where there is room. The first comes three days after the
// piece was last played, each further one after twice the gap before, until that is the best gap
// for the days left; then the gaps follow it, down to the run-throughs for the new date, which are
// required as they are for the first. What a day cannot hold goes on on the next. `unplaced` names
// what finds no place.
// REQUIRES: everything is learned before the plan's first day.
Schedule keep_up(const Work& work);

}  // namespace cahier
