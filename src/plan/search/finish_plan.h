// A schedule becomes a plan.
#pragma once

#include "plan/plan.h"
#include "plan/schedule/divided_work.h"
#include "plan/schedule/work.h"
#include "plan/terms.h"

namespace cahier {

// With its pieces and their dice, numbered tasks, and whether it fits; what gave way is not named
// yet.
Plan finish_plan(const Terms& terms, const DividedWork& divided, Schedule schedule);

}  // namespace cahier
