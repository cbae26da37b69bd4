// Every way of cutting a piece into chunks that rule 1 allows.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "practice/method.h"

namespace cahier::brute {

// Copies of the piece whose phrases are the chunks, so that it can be cut in one way only: one for
// each way of cutting the piece itself. Sections are those the planner would make.
std::vector<Piece> chunkings(const Piece& piece, const Method& method);

// The load under which a phrase within the method's bounds is never cut further.
inline constexpr double kNeverCut = 1e6;

}  // namespace cahier::brute
