// Keeping a learned piece between one performance and the next.
#pragma once

#include <optional>
#include <vector>

#include "plan/schedule.h"

namespace cahier {

// Lays upkeep on the calendar: sittings in which all of a piece is recalled, in turn from memory,
// slowly and counting, with cue starts where there is room. The first comes three days after the
// piece was last played, each further one after twice the gap before, until that is the best gap
// for the days left; then the gaps follow it, down to the run-throughs for the new date, which are
// required as they are for the first. What a day cannot hold goes on on the next. `unplaced` names
// what finds no place.
// REQUIRES: everything is learned before the plan's first day.
Draft keep_up(const Work& work);

// The record of a piece that was played on `performed` and of which no log tells: everything
// learned, joined and tempered in time, and one run-through on that day.
Record as_performed(const std::vector<Piece>& pieces, const Method& method, Date performed);

// The first bars of a piece that a record does not tell to be learned; nullopt for none.
std::optional<BarRange> unlearned_bars(const Piece& piece, const Record& record, int index);

}  // namespace cahier
