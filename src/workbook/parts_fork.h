// One way in, several ways out: how look-alikes part.
#pragma once

#include "paper/canvas.h"

namespace cahier {

// A stem that enters `box` at its left and parts into `branches`, each ending in an arrow at the
// right, `pitch` apart; the first points at the middle of the first writing row of its passage.
void draw_fork(Canvas& canvas, const Box& box, int branches, double pitch);

}  // namespace cahier
