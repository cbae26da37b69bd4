// A drawn page set down on another: larger or smaller, turned, moved.
#pragma once

#include <functional>

#include "paper/recording_canvas.h"

namespace cahier {

struct Placement {
  double scale = 1;
  // Turned by 90 degrees, so that its top lies at the left.
  bool turned = false;
  Point at;  // of the placed page's top left corner, millimetres
};

// Draws everything of `page` on the canvas's current page. Type, lines and circles grow with it.
// `page_of` says where a link leads now, given the page that it led to.
void draw_placed(Canvas& canvas, const DrawnPage& page, const Placement& placement,
                 const std::function<int(int)>& page_of);

}  // namespace cahier
