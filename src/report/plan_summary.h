// The head of a plan's text: what it is for, what it contains, what it assumes.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// Title and dates, a summary, and the assumptions; ends in a newline.
std::string plan_summary(const Plan& plan, const Words& words);

}  // namespace cahier
