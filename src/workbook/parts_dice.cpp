#include "workbook/parts_dice.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <vector>

#include "workbook/style.h"

namespace cahier {
namespace {

// From the middle of the die, in steps to its outer pips.
struct Pip {
  int across;
  int down;
};

std::vector<Pip> pips(int face) {
  static constexpr std::array<Pip, 7> kPlaces = {
      {{0, 0}, {-1, -1}, {1, 1}, {1, -1}, {-1, 1}, {-1, 0}, {1, 0}}};
  if (face < 1 || face > 6) throw std::logic_error("a die has no such face");
  // An odd face has the pip in the middle; each further pair is added to the one before.
  const auto* first = kPlaces.data() + (face % 2 == 1 ? 0 : 1);
  return std::vector<Pip>(first, first + face);
}

}  // namespace

void draw_die(Canvas& canvas, const Box& box, int face) {
  const double side = std::min(box.width, box.height);
  const Point middle = box.centre();
  canvas.rectangle(Box{middle.x - side / 2, middle.y - side / 2, side, side}.inset(0.2),
                   {Stroke{0.4, style::kDark, 0, 0, false}, {}});
  for (const Pip pip : pips(face)) {
    const Point at{middle.x + pip.across * side * 0.27, middle.y + pip.down * side * 0.27};
    canvas.circle(at, side * 0.19, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
  }
}

}  // namespace cahier
