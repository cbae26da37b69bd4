// The kinds of recall take turns.
#pragma once

#include <vector>

#include "plan/due/piece_progress.h"

namespace cahier {

// Turns of which the kind is known.
inline constexpr int kSlowly = 0, kFromMemory = 2;

// Bars passed through slowly, then counting, then recalled at a nearer tempo, by `turn`; always
// recalled where `room` minutes do not reach for more. `chunks` are those of the bars.
Task recall_turn(const PieceProgress& progress, BarRange bars, const std::vector<int>& chunks,
                 int turn, int day, double room);

}  // namespace cahier
