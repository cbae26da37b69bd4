// The rules one by one, each in a file named by its number.
#pragma once

#include "plan/rules/indexed_plan.h"

namespace cahier {

// The rules, each adding what it finds. check_form goes first; the others rely on its success and
// on index_pieces.
bool check_form(IndexedPlan& indexed);         // false when the rest cannot be checked; sets `days`
void check_past(IndexedPlan& indexed);         // what was done is what the record tells
void check_weakness(IndexedPlan& indexed);     // levels and slips of chunks are the record's
void check_chunks(IndexedPlan& indexed);       // rule 1
void check_learning(IndexedPlan& indexed);     // rule 2
void check_calendar(IndexedPlan& indexed);     // rule 3, names and order of tasks
void check_steps(IndexedPlan& indexed);        // what is played, how often and how fast
void check_covered(IndexedPlan& indexed);      // tasks hold the chunks they say, all learned before
void check_joins(IndexedPlan& indexed);        // rule 4
void check_recalls(IndexedPlan& indexed);      // rule 5
void check_runs(IndexedPlan& indexed);         // rule 6
void check_cues(IndexedPlan& indexed);         // rule 7
void check_look_alikes(IndexedPlan& indexed);  // rule 8
void check_temper(IndexedPlan& indexed);       // rule 9
// Rule 11, last: takes out of what was found what the last days may leave undone.
void let_last_days_pass(IndexedPlan& indexed);

}  // namespace cahier
