// A plan that the search found, written out in full, so that the checker can read it.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "search.h"

namespace cahier::brute {

// `piece` is the piece as the player gave it. REQUIRES: choices of a search on these facts and
// terms, one for each practice day.
Plan written_plan(const Piece& piece, const Facts& facts, const Terms& terms,
                  const std::vector<Choice>& choices);

}  // namespace cahier::brute
