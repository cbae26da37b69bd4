// The order of a day's tasks, its breaks, and the ids of tasks.
#pragma once

#include <functional>

#include "plan/plan.h"

namespace cahier {

// How hard the bars of a task are: the level of the hardest.
using LevelOf = std::function<int(const Task&)>;

// Whether two tasks are turns on the same passage: of one piece, with a chunk or a bar in common.
// A run-through is the whole and no turn on a passage; nor is what the dice alone decide.
bool same_passage(const Task& one, const Task& other);

// What is cold comes first: a run-through, recalls and passes. Then what is new, the hardest of it
// first; then Temper, joins and cue starts, and a second run-through last. Within that no two turns
// on the same passage follow each other where another task can stand between them; Temper stays in
// the order of weakness.
void put_in_order(Day& day, const LevelOf& level_of);

// Divides the day into sittings with a break between: as many as there are blocks, where the
// minutes ask for them, and none longer than `break_after` minutes where the tasks allow it. The
// first sitting of a day longer than that is short: the first break comes in the first half.
void divide_into_sittings(Day& day, int blocks, double break_after);

// Gives every task its id: month, day and number, "0104-1". The same day of a later year goes on
// counting, so that no id comes twice.
void number_tasks(std::vector<Day>& calendar);

}  // namespace cahier
