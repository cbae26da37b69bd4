#include "workbook/sheets/starts/fork_drawing.h"

#include "paper/text_fitting.h"
#include "workbook/parts/arrow.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kThick = 0.7;
constexpr double kNode = 2;           // diameter
constexpr double kLabel = 3 * kGrid;  // a line of words at the stem
constexpr double kStem = 0.55;        // of the width
constexpr double kArrow = 6;          // level, at the end of a branch

}  // namespace

void draw_fork(Canvas& canvas, const Box& box, int branches, double first, double pitch,
               std::string_view above, std::string_view below) {
  const Stroke stroke{kThick, style::kDark, 0, 0, false};
  const double stem_y = box.y + first + pitch * (branches - 1) / 2;
  const Point parting{box.x + box.width * kStem, stem_y};
  const Box label{box.x, stem_y - kLabel - 0.6, parting.x - box.x - kNode, kLabel};
  draw_line(canvas, label, above, style::kSmall, Align::left, style::kLeast);
  draw_line(canvas, label.moved(0, kLabel + 1.2), below, style::kSmall, Align::left, style::kLeast);
  canvas.line({box.x, stem_y}, parting, stroke);
  canvas.circle(parting, kNode, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
  for (int branch = 0; branch < branches; ++branch) {
    const double y = box.y + first + pitch * branch;
    const Point bend{box.right() - kArrow, y};
    if (y != stem_y) canvas.line(parting, bend, stroke);
    draw_arrow(canvas, y != stem_y ? bend : parting, {box.right(), y}, kThick);
  }
}

}  // namespace cahier
