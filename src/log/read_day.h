// What the entries of one date say was done.
#pragma once

#include <vector>

#include "log/log_reading.h"

namespace cahier {

// Adds to the record what the entries of one date tell, and refuses what contradicts itself or
// what was read of earlier dates. REQUIRES: at least one entry, all of one date.
void read_day(const std::vector<DayEntry>& entries, LogReading& reading);

}  // namespace cahier
