#include "workbook/parts/arrow.h"

#include "workbook/style.h"

namespace cahier {

void draw_arrow(Canvas& canvas, Point from, Point tip, double width) {
  const double length = arrow_head(width);
  canvas.line(from, {tip.x - length + 0.3, tip.y}, {width, style::kDark, 0, 0, false});
  Outline head;
  head.move_to(tip);
  head.line_to({tip.x - length, tip.y - length * 0.55});
  head.line_to({tip.x - length, tip.y + length * 0.55});
  head.close();
  canvas.fill(head, Fill{style::kDark, false});
}

}  // namespace cahier
