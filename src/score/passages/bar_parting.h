// How two bars of a score part.
#pragma once

#include <vector>

#include "piece/parting.h"
#include "score/passages/bar_notes.h"

namespace cahier {

// REQUIRES: `one` and `other` are indices of `bars`, notes_of_bars(score), and one < other.
Parting bar_parting(const Score& score, const std::vector<BarNotes>& bars, int one, int other);

}  // namespace cahier
