// What a child throws to choose where to start.
#pragma once

#include <string_view>
#include <vector>

#include "plan/plan.h"

namespace cahier {

// One coin for two starts, one die for up to six, else the plan's own tables; those too where the
// piece says what is thrown. Empty for a piece with one start.
std::vector<DiceTable> child_tables(const PlannedPiece& piece);

// The catalogue's key for a number of throws: "child.toss_coin".
std::string_view child_throw_key(const PlannedPiece& piece);

}  // namespace cahier
