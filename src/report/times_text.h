// At which times of a repeat something holds, in words.
#pragma once

#include <string>
#include <vector>

#include "text/words.h"

namespace cahier {

// "first time", "last time", "each time but the last", "times 1 and 3"; empty where it is all of
// them. `times` count from 1 and rise; `of` is how many there are.
std::string times_text(const Words& words, const std::vector<int>& times, int of);

}  // namespace cahier
