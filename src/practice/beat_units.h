// Several tempi counted in one unit of beat, so that a metronome need not be counted anew.
#pragma once

#include <optional>

#include "piece/meter.h"

namespace cahier {

// The longest beat that divides both: the eighth for a quarter and a dotted quarter. None where
// only a sixteenth does.
std::optional<Beat> common_beat(Beat one, Beat other);

// Beats of `unit` in a minute. An exact tempo stays exact; one that is not becomes a mark of the
// metronome again, the next lower one, as long as the scale reaches.
double counted_in(const Tempo& tempo, Beat unit, bool exact);

}  // namespace cahier
