// The form of a piece drawn to scale: bars along a line, sections as bands in which what comes
// back looks alike.
#pragma once

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
  double right(int bar) const { return left(bar + 1); }
  double right() const { return right(bars_.last); }
  // The box over those of `range` that stand on this line. REQUIRES: some do.
  Box over(BarRange range, double y, double height) const;

 private:
  double x_;
  double bar_width_;
  BarRange bars_;
};

// The piece cut into lines of at most `most` bars: where a section ends if that leaves a line at
// least half full, else where a chunk ends. REQUIRES: most >= 1.
std::vector<BarRange> form_lines(const PlannedPiece& piece, int most);

// For each section the number of what it is made of, counted from 0: a return has the number of
// the section it is learned in.
std::vector<int> form_kinds(const PlannedPiece& piece);

// Fills a section's band with the pattern of its kind: five of them, in turn.
void draw_form_pattern(Canvas& canvas, const Box& box, int kind);

// The bands of the sections on a line, each with its name where there is room, returns with the
// bars they repeat. The edge of a band that goes on to another line is left open. False when a
// name had to be cut or left out where its section begins.
bool draw_section_bands(Book& book, const PlannedPiece& piece, const BarScale& scale, double y,
                        double height);

// Bar numbers over a line, at its first bar and at every second, fourth, eighth … bar after it,
// as closely as they can stand.
void draw_bar_numbers(Canvas& canvas, const BarScale& scale, double y, double height);

// The whole piece on one line: sections, the beginnings of chunks and the cue starts' numbers.
void draw_form_strip(Book& book, const PlannedPiece& piece, const Box& box);
inline constexpr double kFormStripHeight = 18;

}  // namespace cahier
