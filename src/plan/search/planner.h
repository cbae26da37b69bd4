// A plan from pieces and terms: tries ways of pacing until one satisfies every rule.
#pragma once

#include <optional>
#include <vector>

#include "plan/plan.h"
#include "plan/schedule/effort.h"
#include "plan/terms.h"

namespace cahier {

// The best plan found. When no pacing places all the work, `fits` is false and the plan holds what
// can be placed, with `unplaced` naming the rest; remedies are not searched (see feasibility.h).
// Every plan returned has passed the checker; a violation in a plan that should fit makes it not
// fit. REQUIRES: from < by, at least one piece.
//
// The search ends when `effort` is used up; then a plan that fits may exist all the same. The most
// that fits is then looked for with a quarter of `kMostEffort`.
Plan make_plan(const std::vector<Piece>& pieces, const Terms& terms);
Plan make_plan(const std::vector<Piece>& pieces, const Terms& terms, Effort& effort);

// The same plan where everything has a place, else nullopt: for asking what would fit, without the
// work of placing as much as can be. REQUIRES as above.
std::optional<Plan> plan_that_fits(const std::vector<Piece>& pieces, const Terms& terms);
std::optional<Plan> plan_that_fits(const std::vector<Piece>& pieces, const Terms& terms,
                                   Effort& effort);

}  // namespace cahier
