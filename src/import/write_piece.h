// A score as a piece file to start from.
#pragma once

#include <string>

#include "score/score.h"

namespace cahier {

// YAML that piece/read_piece takes. At its top it says which score it came from, which part, and
// what the score leaves open. Look-alikes say beside them how they part, hard bars for which hand.
std::string write_piece(const Score& score);

}  // namespace cahier
