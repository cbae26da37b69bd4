// Several tempi counted in one unit of beat, so that a metronome need not be counted anew.
#pragma once

#include <optional>
#include <vector>

#include "piece/meter.h"

namespace cahier {

// Music to be counted: its own beat, in which a bar is so many quarters long, and how fast it goes
// in quarters a minute.
struct CountedMusic {
  Beat beat = Beat::quarter;
  double bar_quarters = 4;
  double quarters_per_minute = 0;
};

// The one unit in which all of it can be counted with a metronome: the longest that divides each
// beat; where that would be too fast, the shortest longer one that is a whole number of a beat and
// goes into the bar evenly, or divides the beat. None where there is none, and for no music.
std::optional<Beat> common_unit(const std::vector<CountedMusic>& music);

// Beats of `unit` in a minute. An exact tempo stays exact; one that is not becomes a mark of the
// metronome again, the next lower one, as long as the scale reaches.
double counted_in(const Tempo& tempo, Beat unit, bool exact);

}  // namespace cahier
