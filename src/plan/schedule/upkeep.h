// Keeping a learned piece between one performance and the next.
#pragma once

#include <optional>
#include <vector>

#include "plan/schedule/comfortable.h"

namespace cahier {

// Lays upkeep on the calendar: sittings in which all of a piece is recalled, in turn from memory,
// slowly and counting, with cue starts where there is room. The first comes three days after the
// piece was last played, each further one after twice the gap before, until that is the best gap
// for the days left; then the gaps follow it, down to the run-throughs for the new date, which are
// required as they are for the first. What a day cannot hold goes on on the next. `unplaced` names
// what finds no place.
// REQUIRES: everything is learned before the plan's first day.
Draft keep_up(const Work& work);

// What must have been done of a piece that is to be kept, where no log tells of it: of a piece of
// which nothing is known to be learned (`unlearned` is all of it) that it was learned, joined and
// tempered in time and played on the day before `from`; of one that is partly known, that the rest
// was learned by then.
std::vector<Done> taken_as_done(const Piece& piece, int index, const Method& method, Date from,
                                const std::vector<BarRange>& unlearned);

// The record with that for every piece.
Record as_kept(Record record, const std::vector<Piece>& pieces, const Method& method, Date from);

}  // namespace cahier
