// The days of the run-throughs, and of what leads up to them, set aside before the rest is laid
// out.
#pragma once

#include <optional>

#include "plan/schedule/draft.h"
#include "plan/schedule/work.h"

namespace cahier {

// Sets them aside for every piece: run-throughs, and where the pace is not hurried the halves and
// long sections before the first of them.
void set_runs_aside(Draft& draft, const Pace& pace);

// The pace for another draft, where the first run-through of a piece comes later after its last new
// bars than it should: in `schedule`, laid out at this pace, learning ended before its even share
// would have. Nothing where none is late.
std::optional<Pace> with_sooner_runs(const Work& work, Pace pace, const Schedule& schedule);

// A piece that is not learned by the last day of learning has no run-throughs: their days are free
// for recalls.
void give_runs_back(Draft& draft);

}  // namespace cahier
