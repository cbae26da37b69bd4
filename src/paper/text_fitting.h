// Text made to fit: shrunk, cut, broken into lines, set in boxes.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "paper/canvas.h"

namespace cahier {

// The grid step for lines of text and everything below one another, millimetres.
inline constexpr double kGrid = 1.5;

// The next step of the grid at or below `millimetres`.
double on_grid(double millimetres);

// The distance of baselines for a size in points: the fewest whole steps of the grid that leave
// the lines apart.
double line_pitch(double size_pt);

enum class Align { left, centre, right };

struct Fitted {
  std::string text;
  TextStyle style;   // with the size that fits
  double width = 0;  // millimetres
  bool cut = false;  // something is left out
};

// Ink that overhangs a letter's advance (j, an italic f) counts as width everywhere here.
//
// One line in `width` millimetres: at style's size if it fits, else smaller in steps of a quarter
// point down to `smallest_pt`, else as many whole words as fit, or letters where no word does
// (empty when not even that fits).
Fitted fit_line(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
                double width, double smallest_pt);

// Lines of at most `width` millimetres, broken where may_break_before() allows it, and always at
// '\n'. A word longer than a line is cut between characters. A line has at least one character,
// even where that is wider than `width`.
std::vector<std::string> wrap(const Typefaces& typefaces, std::string_view text,
                              const TextStyle& style, double width);

// Draws one line in `box`, centred in its height by the capitals (so that figures and words on
// one row share a baseline), made to fit with fit_line. Respects style.turn: upwards, the text
// runs along the box's height. A box of 1.25 times the type size holds every letter; one of 1.6
// times also accented capitals. Returns the length in millimetres.
double draw_line(Canvas& canvas, const Box& box, std::string_view text, const TextStyle& style,
                 Align align, double smallest_pt);

// A paragraph broken to a width, its lines set on the grid.
class TextBlock {
 public:
  TextBlock(const Typefaces& typefaces, std::string_view text, const TextStyle& style,
            double width);

  const std::vector<std::string>& lines() const { return lines_; }
  double line_height() const { return line_height_; }
  // Millimetres from the top of the first line to the bottom of the last; 0 without lines.
  double height() const { return line_height_ * static_cast<double>(lines_.size()); }

  // Draws the lines from the top of `box` downwards, in its width. Lines below the box are drawn
  // too, and the layout check finds them: compare height() first. Turned text is not for blocks.
  // Returns the y below the last line.
  double draw(Canvas& canvas, const Box& box, Align align = Align::left) const;

 private:
  std::vector<std::string> lines_;
  TextStyle style_;
  double line_height_ = 0;
};

}  // namespace cahier
