// A plan as JSON, format cahier-plan-1.
#pragma once

#include <string>

#include "plan/plan.h"

namespace cahier {

// UTF-8, ends in a newline, a line for each day. Keys in the order of the format's description,
// further ones after them; numbers with at most one decimal, `near_share` with four; sentences in
// English.
std::string plan_json(const Plan& plan);

}  // namespace cahier
