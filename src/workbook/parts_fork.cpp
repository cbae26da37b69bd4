#include "workbook/parts_fork.h"

#include "paper/text_fitting.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kThick = 0.7;
constexpr double kArrow = 2.4;
constexpr double kBranchAt = 11;  // below the top of its passage

// A head that points to the right, its tip at `tip`.
Outline arrow_head(Point tip) {
  Outline head;
  head.move_to(tip);
  head.line_to({tip.x - kArrow, tip.y - kArrow * 0.5});
  head.line_to({tip.x - kArrow, tip.y + kArrow * 0.5});
  head.close();
  return head;
}

}  // namespace

void draw_fork(Canvas& canvas, const Box& box, int branches, double pitch, std::string_view stem) {
  const Stroke stroke{kThick, style::kDark, 0, 0, false};
  const double stem_y = box.y + kBranchAt + pitch * (branches - 1) / 2;
  const Point parting{box.x + box.width * 0.48, stem_y};
  draw_line(canvas, {box.x, stem_y - 5, parting.x - box.x - 1.5, 4.4}, stem, style::kSmall,
            Align::left, style::kLeast);
  canvas.line({box.x, stem_y}, parting, stroke);
  canvas.circle(parting, 2, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
  for (int branch = 0; branch < branches; ++branch) {
    const double y = box.y + kBranchAt + pitch * branch;
    const double bend = box.x + box.width * 0.8;
    if (y != stem_y) canvas.line(parting, {bend, y}, stroke);
    canvas.line({y != stem_y ? bend : parting.x, y}, {box.right() - kArrow + 0.3, y}, stroke);
    canvas.fill(arrow_head({box.right(), y}), Fill{style::kDark, false});
  }
}

}  // namespace cahier
