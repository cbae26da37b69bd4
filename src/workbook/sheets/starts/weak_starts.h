// Cue starts that have more of the dice than others.
#pragma once

#include <set>
#include <string_view>
#include <vector>

#include "practice/dice_tables.h"

namespace cahier {

// The numbers of the starts that come up more often than the rarest of their table.
std::set<int> weak_starts(const std::vector<const DiceTable*>& tables);

// The key of the sentence that says how much more often; empty where all have equal shares.
std::string_view weak_words(const std::vector<const DiceTable*>& tables);

}  // namespace cahier
