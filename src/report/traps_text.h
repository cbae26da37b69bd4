// What can lead a memory astray, in words.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// After an empty line, for each piece its forks, the most dangerous first: the bars of all places,
// where they part, what a score tells of the difference, and the tasks and starts of the plan that
// meet it, by their codes and numbers. Lines are at most 80 characters; ends in a newline. A plan
// without a fork says so.
std::string traps_text(const Plan& plan, const Words& words);

}  // namespace cahier
