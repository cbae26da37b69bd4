// What a record tells of the player.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "practice/pace.h"
#include "practice/record.h"

namespace cahier {

// Minutes that the method expects of one drill done once, the player's own pace apart.
double expected_minutes(const Done& done, const Piece& piece, Method method);

// What learning took against what the method expects (its own pace apart). A chunk whose minutes
// were written down is one sample. Of a day of which only all the minutes are known, what the rest
// should take goes off, and what is left is one sample, shared by the new bars of that day.
std::vector<PaceSample> pace_samples(const Record& record, const std::vector<Piece>& pieces,
                                     const Method& method);

}  // namespace cahier
