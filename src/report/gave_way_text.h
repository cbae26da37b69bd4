// What a plan gives up for want of time, in words.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// "What gave way: no write-outs, one slow and one counted pass of some bars." Empty where nothing
// gave way.
std::string gave_way_text(const Plan& plan, const Words& words);

}  // namespace cahier
