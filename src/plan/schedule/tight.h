// Lays what is required on a short calendar, as tightly as it goes: for dates that leave no room
// for comfort.
#pragma once

#include "plan/schedule/comfortable.h"
#include "plan/schedule/tight_variants.h"

namespace cahier {

// Stops where it is plain that not everything will find a place; `unplaced` then names only some of
// what does not.
Draft squeeze(const Work& work, const Packing& packing);

}  // namespace cahier
