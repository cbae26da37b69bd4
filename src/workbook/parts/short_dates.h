// Short dates as a plan needs them.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// "4 Jan", with the year where the plan reaches from one year into another.
std::string short_date(const Words& words, const Plan& plan, Date date);

}  // namespace cahier
