// The bars that a task plays for certain.
#pragma once

#include <vector>

#include "plan/rules/indexed_plan.h"

namespace cahier {

// Finds the starts that lead past a fork; needed by surely_played. REQUIRES the bars indexed.
void index_forks(IndexedPiece& piece);

// Stretches as they stand in the piece. A drill plays its bars. Cue starts play from each bar begun
// from to where that start ends, whatever the dice bring besides: from a chunk's first bar to its
// last, from inside a chunk to the end of the next; chunks end where a section begins, and in a
// return where its share of the chunk ends. The last start before the fork of look-alikes, in their
// bars, goes on to the end of the chunk that holds the fork; only where there is none, the one on
// the fork. Starts that do not exist play nothing. REQUIRES: pieces indexed, but for `recalled`.
std::vector<BarRange> surely_played(const IndexedPlan& indexed, const Moment& moment);

// The bars begun from in a session of cue starts: of what is planned those of its starts, of what
// is past those that were, whether or not they are cue starts today.
std::vector<int> bars_begun_from(const IndexedPlan& indexed, const Moment& moment);

}  // namespace cahier
