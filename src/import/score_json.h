// A score as JSON.
#pragma once

#include <string>

#include "score/score.h"

namespace cahier {

// The format "cahier-score-1", one bar or measure element a line, with a newline at the end. Bars
// and play order go by measure elements, counted from 1, inclusive; lengths are in quarter notes
// and tempi in quarter notes a minute. What the score does not say is null.
std::string score_json(const Score& score);

}  // namespace cahier
