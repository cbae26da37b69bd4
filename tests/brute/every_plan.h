// The search itself, held against something that cannot be wrong in the same way: every list of
// tasks on every day, with nothing known but what a task is, and the checker of plans to say yes or
// no. Slow beyond one or two chunks and a few days.
#pragma once

#include <optional>

#include "plan/chunks/analysis.h"
#include "plan/terms.h"

namespace cahier::brute {

// Whether any plan keeps the rules; nullopt when more than `most` plans would have to be checked.
// REQUIRES: the anatomy is that of the piece as it is to be cut.
std::optional<bool> any_plan_at_all(const Analysis& analysis, const Terms& terms, long most);

}  // namespace cahier::brute
