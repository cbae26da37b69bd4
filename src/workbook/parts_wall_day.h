// A day as it is read from the wall: its date, what is new, and how much there is to do.
#pragma once

#include <string>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// The sizes of a wall sheet: the least type for the wall, times `scale`.
struct WallSizes {
  double scale = 1;

  double type() const;    // points
  double line() const;    // millimetres
  double noun() const;    // points, of the word behind a count
  double detail() const;  // millimetres, of the line with bars below a count; 0 for none
};

class WallDay {
 public:
  WallDay(const Book& book, const Day& day);

  // Whether everything fits, each on a line of its own; above the least type the date in one.
  bool fits(double width, double height, const WallSizes& sizes) const;
  // Draws the day in `box`, in lines where they fit, else as a paragraph.
  void draw(Canvas& canvas, const Box& box, const WallSizes& sizes) const;

 private:
  struct Count {
    int number = 0;
    std::string noun;
    std::string bars;
  };

  std::string heading(const Day& day) const;
  std::vector<std::string> fresh_lines(double width) const;
  double body_height(double width, const WallSizes& sizes) const;
  Box draw_date(Canvas& canvas, const Box& box, const WallSizes& sizes) const;
  bool date_in_one_line(double width, const WallSizes& sizes) const;
  void draw_lines(Canvas& canvas, Box rest, const WallSizes& sizes) const;
  void draw_paragraph(Canvas& canvas, const Box& box) const;

  const Book& book_;
  const Day& day_;
  std::vector<BarRange> fresh_;  // new bars, neighbours put together
  int fresh_chunks_ = 0;
  std::vector<Count> counts_;
};

}  // namespace cahier
