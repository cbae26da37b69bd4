// What was done of the workbook before the new one.
#pragma once

#include "log/log_reading.h"
#include "log/past_editions.h"
#include "plan/terms.h"

namespace cahier {

// REQUIRES: every entry was read.
LastEdition what_became_of(PastEdition& edition, PastEditions& editions, const LogReading& reading,
                           const Terms& terms);

}  // namespace cahier
