// What a metronome has to count of a task.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// The task's tempi by bar, one at least. REQUIRES: it has a tempo.
std::vector<TempoFrom> tempi_of(const Task& task);

// The beat in which each of a day's rows of one piece is counted: as many neighbours as can be
// share one unit, which makes the fewest changes there can be. A row that no one unit can count
// keeps its beat. A run-through is played without a metronome: it fits any unit. REQUIRES: as
// above, of each.
std::vector<Beat> beats_of_rows(const std::vector<const Task*>& rows, const Piece& piece);

}  // namespace cahier
