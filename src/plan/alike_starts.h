// Cue starts that begin with the same bars.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// Starts that nothing tells from `cue` before the bar after `until`, which is one of the cue's own:
// the bars they begin at, rising.
struct AlikeStarts {
  std::vector<int> bars;
  int until = 0;
  bool operator==(const AlikeStarts&) const = default;
};

// The piece's other starts that begin as `cue` does: where a section comes back, and in look-alikes
// before their fork. Those that part soonest come first. A start with a pickup begins at bar 1.
std::vector<AlikeStarts> alike_starts(const PlannedPiece& piece, const CueStart& cue);

}  // namespace cahier
