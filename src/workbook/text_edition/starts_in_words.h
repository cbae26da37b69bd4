// The cue starts of a piece, what to throw for them, and where to go on after a slip, in words.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// A line for each cue start, then a line for each with the throws that choose it.
std::vector<std::string> starts_in_words(const Words& words, const PlannedPiece& piece);

// One sentence with the places to go on from; empty where the plan has none.
std::string rejoining_in_words(const Words& words, const PlannedPiece& piece);

}  // namespace cahier
