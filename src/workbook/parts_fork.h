// One way in, several ways out: how look-alikes part.
#pragma once

#include <string_view>

#include "paper/canvas.h"

namespace cahier {

// A stem that enters `box` at its left and parts into `branches`, each ending in an arrow at the
// right, `pitch` apart; `stem` is written over the stem. The first points at the middle of the
// first writing row of its passage.
void draw_fork(Canvas& canvas, const Box& box, int branches, double pitch, std::string_view stem);

}  // namespace cahier
