// What would make room for a task that is missing, as far as the plan alone can tell.
#pragma once

#include "plan/plan.h"
#include "plan/quality/quality_figure.h"

namespace cahier {

// A shortfall with what would mend it: nothing is said where a day of the window has room for
// `minutes` already. Where every practice day of it is full, a day off that is worked on, where
// there is one, else more minutes; where the window holds no day of the plan, a later date.
Shortfall with_mend(Shortfall shortfall, const Plan& plan, DateSpan window, double minutes);

}  // namespace cahier
