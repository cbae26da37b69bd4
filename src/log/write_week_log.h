// A log of one week to be filled in.
#pragma once

#include <string>

#include "plan/plan.h"
#include "plan/terms.h"
#include "text/words.h"

namespace cahier {

// The YAML text of a log for the week, Monday to Sunday, that holds `day`: the line of the edition
// with that week's tasks, and an entry for each day with tasks (in a programme for each piece of
// it) in which nothing is reported yet. Comments say how to fill it in and what was planned.
// REQUIRES: the plan is of these terms, and has the day.
std::string week_log(const Plan& plan, const Terms& terms, const Words& words, Date day);

}  // namespace cahier
