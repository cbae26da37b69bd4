// A tempo as a drawn note and a number.
#pragma once

#include "paper/text_fitting.h"
#include "piece/meter.h"

namespace cahier {

// "♩. = 66" in `box`, centred in its height. Returns the width in millimetres, as tempo_width().
double draw_tempo(Canvas& canvas, const Box& box, const Tempo& tempo, const TextStyle& style);
double tempo_width(const Typefaces& typefaces, const Tempo& tempo, const TextStyle& style);

}  // namespace cahier
