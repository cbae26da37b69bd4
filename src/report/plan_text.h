// A plan as plain text for a terminal.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// Heading, summary, what the plan assumes, a line for each day, and, when it does not fit,
// what is not placed and the remedies, each remedy's words alone on a line; a plan that
// was tried with longer learning ends with the result. With `why` every task has its own
// line and under it the reason, and of a fork drill what a score tells of the difference; with
// `spacing` the days of recall of each chunk stand beside the best ones after the last day. Lines
// are at most 80 characters.
std::string plan_text(const Plan& plan, const Words& words, bool why, bool spacing = false);

// Of a plan that does not fit: how much is left over, what is not placed, and the remedies.
std::string misfit_text(const Plan& plan, const Words& words);

}  // namespace cahier
