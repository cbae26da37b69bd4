// What was done of the edition before, in the text of a plan.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// The edition and how far behind or ahead it is, the player's pace, and what slips most; each line
// ends in a newline. Empty for a first edition.
std::string standing_text(const Plan& plan, const Words& words);

}  // namespace cahier
