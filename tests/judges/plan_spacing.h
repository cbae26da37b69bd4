// What a plan says of its gaps between recalls, worked out again from its days alone.
#pragma once

#include <string>
#include <vector>

#include "judged_plan.h"

namespace judge {

// Every figure of "spacing" that the plan's days contradict, and a share of near gaps that is less
// than `least_share`; each as "spacing: …".
std::vector<std::string> spacing_faults(const Plan& plan, double least_share);

}  // namespace judge
