// Lays the work on the calendar, day by day, for one way of pacing it.
#pragma once

#include "plan/schedule/work.h"

namespace cahier {

Schedule lay_out(const Work& work, const Pace& pace);

}  // namespace cahier
