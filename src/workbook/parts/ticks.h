// Rows of circles to tick, one row a step, each with a label.
#pragma once

#include <string>
#include <vector>

#include "paper/canvas.h"
#include "workbook/style.h"

namespace cahier {

struct TickRow {
  std::string label;  // may be empty
  int count = 1;
  // Words in front of one circle more, behind the others; without them there is none.
  std::string more{};
};

class TickRows {
 public:
  // Lays the rows out in `label_width` and `circles` to a line; a row with more goes on below. A
  // label that is too wide for a line is set smaller and broken. A further circle whose words do
  // not fit behind the others has a line of its own. `pitch` is the height of a line.
  TickRows(const Typefaces& typefaces, const std::vector<TickRow>& rows, double label_width,
           int circles, double pitch = style::kTickStep);

  // The room that the widest label would like, at most `most` millimetres; 0 when all are empty.
  static double label_width(const Typefaces& typefaces, const std::vector<TickRow>& rows,
                            double most);
  // From the left edge of the labels to the right edge of the circles.
  static double width(double label_width, int circles);

  int line_count() const { return static_cast<int>(lines_.size()); }
  // Of `count` lines from `first` on, counted from 0.
  double height(int first, int count) const;
  double height() const { return height(0, line_count()); }

  // Draws `count` lines from `first` on, from the top left corner of `box`.
  void draw(Canvas& canvas, const Box& box, int first, int count) const;
  void draw(Canvas& canvas, const Box& box) const { draw(canvas, box, 0, line_count()); }

 private:
  struct Line {
    std::vector<std::string> label;
    TextStyle style;
    int circles = 0;
    double height = 0;
    std::string more;
  };
  Line labelled(const Typefaces& typefaces, const std::string& label, double pitch) const;

  std::vector<Line> lines_;
  double label_width_ = 0;
};

// One circle to tick, in the middle of `box`.
void draw_tick(Canvas& canvas, const Box& box);

}  // namespace cahier
