// Noto Music's accidentals are drawn for running text: too wide, and on no line of a staff. These
// are drawn here, in staff spaces, about the line or space they alter; beams follow the custom of
// a sharp as wide as a space and two and three quarters high.
#include "paper/music_glyphs.h"

namespace cahier {

namespace {

constexpr double kStem = 0.12;

// A beam `thickness` high whose middle runs from (0, left) to (width, right).
Outline beam(double width, double left, double right, double thickness) {
  const double half = thickness / 2;
  Outline outline;
  outline.move_to({0, left - half});
  outline.line_to({width, right - half});
  outline.line_to({width, right + half});
  outline.line_to({0, left + half});
  outline.close();
  return outline;
}

Outline stem(double x, double top, double bottom) {
  return Outline::rectangle({x, top, kStem, bottom - top});
}

Outline sharp() {
  Outline outline = beam(1, -0.38, -0.62, 0.3);
  outline.append(beam(1, 0.62, 0.38, 0.3));
  outline.append(stem(0.26, -1.3, 1.42));
  outline.append(stem(0.62, -1.42, 1.3));
  return outline;
}

Outline natural() {
  constexpr double kWidth = 0.68;
  Outline outline = beam(kWidth, -0.41, -0.57, 0.28);
  outline.append(beam(kWidth, 0.57, 0.41, 0.28));
  outline.append(stem(0, -1.38, 0.71));
  outline.append(stem(kWidth - kStem, -0.71, 1.38));
  return outline;
}

Outline flat() {
  Outline outline = stem(0, -1.75, 0.66);
  outline.move_to({0, 0.7});
  outline.line_to({0, -0.14});
  outline.curve_to({0.28, -0.62}, {0.88, -0.68}, {0.88, -0.18});
  outline.curve_to({0.88, 0.2}, {0.42, 0.38}, {0, 0.7});
  outline.close();
  // The hole runs the other way round.
  outline.move_to({kStem, 0.42});
  outline.curve_to({0.34, 0.24}, {0.58, 0.06}, {0.58, -0.2});
  outline.curve_to({0.58, -0.48}, {0.27, -0.36}, {kStem, -0.06});
  outline.close();
  return outline;
}

}  // namespace

MusicGlyph accidental_glyph(Accidental accidental, double space) {
  const Outline shape = accidental == Accidental::sharp  ? sharp()
                        : accidental == Accidental::flat ? flat()
                                                         : natural();
  return {shape.scaled(space), shape.bounds().width * space};
}

}  // namespace cahier
