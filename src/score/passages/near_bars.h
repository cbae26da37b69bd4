// For each bar the earlier ones that are nearly the same.
#pragma once

#include <utility>
#include <vector>

#include "score/passages/bar_notes.h"

namespace cahier {

// Pairs of an earlier and a later bar, by index, that are alike by `least` (see likeness) and not
// the same; of each later bar the few most alike. Bars are found by the notes they share; of a note
// that very many bars have, the nearest bars are tried.
std::vector<std::pair<int, int>> near_bars(const std::vector<BarNotes>& bars, double least);

}  // namespace cahier
