// How far a recall that is due goes on to its neighbours.
#pragma once

#include <functional>
#include <utility>

#include "plan/due/piece_progress.h"

namespace cahier {

// What is taken along besides what is due: nothing; what waits for its first recall or for its
// join; what was last recalled half a best gap ago or more as well; or all that is learned.
enum class Reach { due, unsettled, ripe, all };

// Whether a chunk is due.
using Due = std::function<bool(int chunk)>;

// The first and the last chunk of one recall that starts from `chunk`: neighbours where they stand,
// learned on earlier days, as far as `room` minutes go.
std::pair<int, int> recall_reach(const PieceProgress& progress, int chunk, int day, double room,
                                 Reach reach, const Due& due);

// Minutes to recall the chunks from the first to the last, neighbours where they stand.
double recall_minutes(const PieceProgress& progress, int first, int last);

// Whether the chunk was learned on an earlier day and stands right after the one before it.
bool follows(const PieceProgress& progress, int chunk, int day);

}  // namespace cahier
