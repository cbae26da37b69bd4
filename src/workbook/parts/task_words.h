// What a task asks for, in words and circles.
#pragma once

#include <string>
#include <vector>

#include "piece/meter.h"
#include "plan/plan.h"
#include "text/words.h"
#include "workbook/parts/ticks.h"

namespace cahier {

// "RH" and "LH" for the right and the left hand, else the part's name.
std::string short_part(const Words& words, const std::string& part);

// "LH", "both", "all"; "say LH" where a part is spoken, "LH aloud" where it is played too; empty
// for a piece with a single part.
std::string step_label(const Words& words, const PlannedPiece& piece, const Step& step);

// A row for each step. For cue starts a row for each start assigned, then one for the dice (or
// coins). A slow pass has one circle more, for where bars were mended.
std::vector<TickRow> tick_rows(const Words& words, const PlannedPiece& piece, const Task& task);

// What is set largest: "17–20". For cue starts the bar to begin at, "17 →", one for each start
// assigned, or what is thrown when all are left to chance.
std::vector<std::string> task_bars(const Words& words, const PlannedPiece& piece, const Task& task);

// How far each start of a fork drill is played. REQUIRES: task.fork.
std::string fork_stop(const Words& words, const Task& task);

// What is thrown to choose a start of the piece: "dice" or "coins".
std::string thrown_name(const Words& words, const PlannedPiece& piece);

// "Recall, cold", "Cue starts 5 and 6".
std::string drill_title(const Words& words, const Task& task);

// What the drill asks for, for someone who meets it for the first times.
std::string drill_meaning(const Words& words, const Task& task);

// What the player's own score has to say in these bars: "bar 17: new manual", one for each mark.
std::vector<std::string> marks_in(const Words& words, const PlannedPiece& piece, BarRange bars);

// The note of the mark in force where a join or a recall begins; empty for other drills, where
// nothing is in force.
std::string mark_in_force(const PlannedPiece& piece, const Task& task);

// How often a run-through or another drill of a single step is played.
int times_of(const Task& task);

// "14½ min", with a space that does not break.
std::string minutes_phrase(const Words& words, double minutes);

// REQUIRES: task.tempo.
Tempo tempo_of(const Task& task);

// Whether a tempo is printed beside it: a run-through is played as on the day, and starts that dice
// choose at the tempo that their list names, unless the bars are not yet so fast.
bool shows_tempo(const PlannedPiece& piece, const Task& task);
// The same of any day, as if the bars were at their tempo.
bool shows_tempo(const Task& task);

// Whether thrown starts are not yet to be played at the tempo that their list names.
bool throws_below_tempo(const PlannedPiece& piece, const Task& task);

// The task's tempo at one of its bars. REQUIRES: task.tempo.
Tempo tempo_at(const Task& task, int bar);

// Where throws are below their tempo, those for the bars at which the piece's tempo becomes
// another. REQUIRES: throws_below_tempo.
std::vector<TempoFrom> thrown_tempi(const PlannedPiece& piece, const Method& method,
                                    const Task& task);

// Whether each cue start of a task has its own tempo beside it.
enum class StartTempi { beside, below };

// The tempi after the first, from bar to bar; empty where one holds throughout. Of cue starts whose
// tempi stand beside them, those into which a start or a way of a fork leads.
std::vector<TempoFrom> later_tempi(const Task& task, StartTempi tempi = StartTempi::beside);

}  // namespace cahier
