// What a bar holds for a hand, and which bars hold the same.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/score.h"

namespace cahier {

// The earliest earlier measure element with the same content; none where it is new or silent.
struct IdenticalMeasure {
  std::optional<int> top;    // the top staff
  std::optional<int> lower;  // all other staves
  std::optional<int> both;
};

// One for each measure element. Content is, staff by staff, the set of onset, duration, spelled
// pitch, grace and tie from before of each note, and the length of the measure; rests do not count.
std::vector<IdenticalMeasure> identical_measures(const std::vector<ScoreMeasure>& measures);

}  // namespace cahier
