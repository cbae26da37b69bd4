// An arrow that points to the right.
#pragma once

#include "paper/canvas.h"

namespace cahier {

// A level line from `from`, `width` millimetres thick, that ends in a head with its tip at `tip`.
// REQUIRES: from.x + arrow_head(width) < tip.x and both on one height.
void draw_arrow(Canvas& canvas, Point from, Point tip, double width);
// How long the head is.
constexpr double arrow_head(double width) { return 1.2 + 1.7 * width; }

}  // namespace cahier
