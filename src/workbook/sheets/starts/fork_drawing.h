// A picture of how look-alikes part: one way in, several ways out.
#pragma once

#include <string_view>

#include "paper/canvas.h"

namespace cahier {

// A stem that enters `box` at its left and parts into `branches`, each ending in an arrow at the
// right: the first `first` millimetres below the top, the next ones `pitch` apart. `above` and
// `below` stand over and under the stem.
void draw_fork(Canvas& canvas, const Box& box, int branches, double first, double pitch,
               std::string_view above, std::string_view below);

}  // namespace cahier
