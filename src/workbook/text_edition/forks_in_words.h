// Where a memory can be led astray, in words.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// The forks of a piece, the most dangerous first: all places and where they part, what a score
// tells of the difference, and how each way begins. Empty where it has none.
std::vector<std::string> forks_in_words(const Words& words, const PlannedPiece& piece);

// How a bar begins, a line for each hand; empty where no score tells.
std::vector<std::string> beginning_in_words(const Words& words, const Piece& piece, int bar);

}  // namespace cahier
