// Pictures of dice and coins.
#pragma once

#include <string_view>

#include "paper/canvas.h"

namespace cahier {

// The upper side of a six-sided die with `face` pips, 1 to 6, as large as `box` allows, in its
// middle. Throws std::logic_error for another number.
void draw_die(Canvas& canvas, const Box& box, int face);

// A die of twenty faces from above, a hexagon with its number. REQUIRES: the box is 8 mm or more
// wide and high.
void draw_d20(Canvas& canvas, const Box& box, int number);

// A coin with a letter for its side. REQUIRES: the box is 4.5 mm or more wide and high.
void draw_coin(Canvas& canvas, const Box& box, std::string_view side);

}  // namespace cahier
