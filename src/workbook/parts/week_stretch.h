// The goal of a week in which nothing is new and nothing is run through.
#pragma once

#include <span>
#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// The longest stretch that the week asks for, and how: "This week: section B from memory, without
// stopping." Of stretches of the same length the hardest way of playing counts. Where the week only
// has other work, what that is.
// REQUIRES: its days have a task.
std::string week_stretch(const Words& words, const Plan& plan, std::span<const Day> week);

}  // namespace cahier
