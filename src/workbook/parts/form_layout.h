// The form of a piece to scale: bars on lines that all share one width of a bar.
#pragma once

#include <span>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// Where bars stand on a line, in millimetres. A pickup, bar 0, is half as wide as the others.
class BarScale {
 public:
  BarScale(double x, double bar_width, BarRange bars) : x_(x), bar_width_(bar_width), bars_(bars) {}

  // The widths of bars that a range takes.
  static double units(BarRange bars) { return bars.size() - (bars.first == 0 ? 0.5 : 0.0); }

  const BarRange& bars() const { return bars_; }
  double bar_width() const { return bar_width_; }
  double left(int bar) const;
  double left() const { return x_; }
  double right(int bar) const { return left(bar + 1); }
  double right() const { return right(bars_.last); }
  // The box over those of `range` that stand on this line. REQUIRES: some do.
  Box over(BarRange range, double y, double height) const;

 private:
  double x_;
  double bar_width_;
  BarRange bars_;
};

// A chunk where it is played: where it is learned, or in a return, which may bring back only some
// of its bars.
struct FormPart {
  BarRange bars;
  int chunk = 0;  // index into the piece's chunks
  bool back = false;
};

// The whole piece in bar order, every bar in one part.
std::vector<FormPart> form_parts(const PlannedPiece& piece);

// Those of all parts of a piece that have bars in `bars`.
std::span<const FormPart> parts_in(const std::vector<FormPart>& parts, BarRange bars);

// The piece cut into lines of at most `most` bars (a pickup is not counted), as few and as evenly
// filled as can be without cutting sections, else phrases, else chunks. REQUIRES: most >= 1.
std::vector<BarRange> form_lines(const PlannedPiece& piece, int most);

// The lines of a piece on a page, the same on every sheet that shows them.
struct FormLayout {
  double labels = 0;     // millimetres at the left of the lines, for the names of their rows
  double bar_width = 0;  // millimetres
  double indent = 0;     // of lines without a pickup, where the piece has one
  std::vector<BarRange> lines;
  std::vector<FormPart> parts;  // of the whole piece

  // A line of it on a page whose content begins at `x`.
  BarScale scale(BarRange line, double x) const;
};

// Chooses between long lines of narrow bars and short ones of wide bars: sections whole, and the
// form map on few pages.
FormLayout form_layout(const Book& book, const PlannedPiece& piece);

// The box at the left of a line for the name of one of its rows.
Box form_label(const FormLayout& layout, double x, double y, double height);

}  // namespace cahier
