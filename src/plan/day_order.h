// The order of a day's tasks, their blocks and their ids.
#pragma once

#include "plan/plan.h"

namespace cahier {

// A run-through first, cold, then recalls and passes, what is new and its joins, cue starts,
// Temper, and a second run-through last. Assigns the blocks of the day.
void put_in_order(Day& day, int blocks);

// Gives every task its id: month, day and number, "0104-1"; from the second year of a plan on with
// the year before it, "280104-1".
void number_tasks(std::vector<Day>& days);

}  // namespace cahier
