// The order of a day's tasks, their blocks and their ids.
#pragma once

#include "plan/plan.h"

namespace cahier {

// A run-through first, cold, then recalls and passes, what is new and its joins, cue starts,
// Temper, and a second run-through last. Assigns the blocks of the day.
void put_in_order(Day& day, int blocks);

// Gives every task its id: month, day and number, "0104-1". The same day of a later year goes on
// counting, so that no id comes twice.
void number_tasks(std::vector<Day>& calendar);

}  // namespace cahier
