// Where a cue start leads.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// The bar at whose end a start from `cue` is over: the end of the chunk that begins there; from
// inside a chunk the end of the next one; in any case past the fork of look-alikes that the cue
// stands a chunk before. Returns are cut up as the bars they come from.
int last_bar_from(const PlannedPiece& piece, const CueStart& cue);

// The cue start from which a passage of look-alikes is played past its fork: the last one in it
// before the fork, else one on the fork; nullptr when there is none.
const CueStart* cue_before_fork(const PlannedPiece& piece, BarRange passage, int fork);

// The bars on the way from a cue start at which the piece's tempo becomes another.
std::vector<int> tempo_changes_from(const PlannedPiece& piece, const CueStart& cue);

}  // namespace cahier
