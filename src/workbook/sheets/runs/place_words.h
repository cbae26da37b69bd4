// A place in a piece as a player thinks of it: by section and phrase, not by bars.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// "B", "B, second phrase", "B, in the second phrase"; "B, second place" where no phrases are named:
// the places to rejoin are counted then. "bar 17" where the section is only called by its bars.
std::string place_text(const Words& words, const PlannedPiece& piece, int bar);

}  // namespace cahier
