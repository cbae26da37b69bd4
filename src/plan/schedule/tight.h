// Lays what is required on a short calendar, as tightly as it goes: for dates that leave no room
// for comfort.
#pragma once

#include "plan/schedule/tight_variants.h"
#include "plan/schedule/work.h"

namespace cahier {

// Stops where it is plain that not everything will find a place; `unplaced` then names only some of
// what does not.
Schedule lay_tight(const Work& work, const TightVariant& variant);

}  // namespace cahier
