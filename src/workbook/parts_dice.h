// Dice as they lie on the table.
#pragma once

#include "paper/canvas.h"

namespace cahier {

// The upper side of a six-sided die with `face` pips, 1 to 6, as large as `box` allows, in its
// middle. Throws std::logic_error for another number.
void draw_die(Canvas& canvas, const Box& box, int face);

}  // namespace cahier
