// Where to go on after a slip in a run-through.
#pragma once

#include <set>
#include <vector>

#include "plan/plan.h"

namespace cahier {

// Bars, rising, to jump forward to: where sections and phrases begin, a few bars apart; `inside`
// are bars that stand for phrases in sections that name none. Also the piece's `cues`, and the
// first bar of a repeat that goes back to it. Never one inside named look-alikes before their fork,
// nor one that leads, within a chunk's length, into the fork of a return: nobody can tell there
// which of them it is. Never one of the piece's hardest bars where an easier place follows within a
// phrase's length. REQUIRES: sections and forks of the piece.
std::vector<int> rejoin_bars(const PlannedPiece& planned, const Method& method,
                             const std::set<int>& inside);

}  // namespace cahier
