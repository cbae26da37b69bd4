// The goal of a week in which nothing is new and nothing is run through.
#pragma once

#include <span>
#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// What the week asks for on most of its days, all its bars together: "This week: section B from
// memory, slowly." Of kinds of work on as many days the one that tells most of a memory counts.
// What is only heard in the head is a goal where nothing else but seams is played.
// REQUIRES: its days have a task.
std::string week_stretch(const Words& words, const Plan& plan, std::span<const Day> week);

}  // namespace cahier
