// Which run-throughs somebody or something else hears.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// Of the run-throughs to come, by the days left to the date at each, in order of time: one for a
// listener near each of `listener_days` before the date and none on the eve, and recordings of
// those before them, from the middle on. Three performances for new audiences made 18 string
// players steadier (Candia and others 2023, Frontiers in Psychology 14:1146405); the days and the
// recordings are common practice.
std::vector<Reason> witnessed_runs(const std::vector<int>& days_left,
                                   const std::vector<int>& listener_days);

}  // namespace cahier
