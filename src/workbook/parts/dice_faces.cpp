#include "workbook/parts/dice_faces.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <string>
#include <vector>

#include "paper/text_fitting.h"
#include "workbook/style.h"

namespace cahier {
namespace {

constexpr Stroke kEdge{0.4, style::kDark, 0, 0, false};

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
                   {kEdge, {}});
  for (const Pip pip : pips(face)) {
    const Point at{middle.x + pip.across * side * 0.27, middle.y + pip.down * side * 0.27};
    canvas.circle(at, side * 0.19, {{}, Fill{style::kDark, false}}, CircleUse::ornament);
  }
}

void draw_d20(Canvas& canvas, const Box& box, int number) {
  constexpr int kCorners = 6;
  const double radius = std::min(box.width, box.height) / 2 - kEdge.width / 2;
  const Point middle = box.centre();
  const auto corner = [&](int at) {
    const double turn = std::numbers::pi / 2 + at * 2 * std::numbers::pi / kCorners;
    return Point{middle.x + radius * std::cos(turn), middle.y - radius * std::sin(turn)};
  };
  for (int at = 0; at < kCorners; ++at) canvas.line(corner(at), corner(at + 1), kEdge);
  draw_line(canvas, Box{middle.x, middle.y, 0, 0}.inset(-radius * 0.8, -radius * 0.7),
            std::to_string(number), style::kStrong, Align::centre, style::kLeast);
}

void draw_coin(Canvas& canvas, const Box& box, std::string_view side) {
  const double diameter = std::min(box.width, box.height) - kEdge.width;
  const Point middle = box.centre();
  canvas.circle(middle, diameter, {kEdge, {}}, CircleUse::ornament);
  draw_line(canvas, Box{middle.x, middle.y, 0, 0}.inset(-diameter * 0.38), side, style::kNoteStrong,
            Align::centre, style::kLeast);
}

}  // namespace cahier
