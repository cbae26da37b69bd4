// From a piece to what the scheduler needs to know of it.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "practice/history.h"

namespace cahier {

// Analyses a piece. `load` is the minutes a chunk should take to learn. What `history` tells to be
// learned stays as it was learned; what slips has a level raised to its weakness, and a cue start
// of its own.
// REQUIRES: piece and method outlive the result.
Analysis analyse(const Piece& piece, const Method& method, double load,
                 const History& history = {});
// The same with chunks cut already.
Analysis analyse(const Piece& piece, const Method& method, std::vector<Chunk> chunks,
                 const History& history = {});

}  // namespace cahier
