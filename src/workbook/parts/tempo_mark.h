// A tempo as a drawn note and a number.
#pragma once

#include "paper/text_fitting.h"
#include "piece/meter.h"

namespace cahier {

// A tempo slower than the slowest mark of a metronome, counted in the next smaller beats: ♪ = 66
// for ♩ = 33. Rounded down to a mark; eighths stay as they are.
Tempo on_the_metronome(const Tempo& tempo);

// "♩. = 66" in `box`, centred in its height. Returns the width in millimetres, as tempo_width().
double draw_tempo(Canvas& canvas, const Box& box, const Tempo& tempo, const TextStyle& style);
double tempo_width(const Typefaces& typefaces, const Tempo& tempo, const TextStyle& style);

}  // namespace cahier
