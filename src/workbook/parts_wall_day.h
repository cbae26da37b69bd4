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
  struct Fresh {
    int piece = 0;
    BarRange bars;
  };

  bool several_pieces() const { return book_.plan().pieces.size() > 1; }
  // What stands over the new bars at `at`; empty where the line before has said it.
  std::string fresh_label(std::size_t at) const;
  std::vector<std::string> fresh_lines(const BarRange& bars, double width) const;
  double fresh_height(double width, const WallSizes& sizes) const;
  Box draw_fresh(Canvas& canvas, Box rest, const WallSizes& sizes) const;
  double body_height(double width, const WallSizes& sizes) const;
  Box draw_date(Canvas& canvas, const Box& box, const WallSizes& sizes) const;
  bool date_in_one_line(double width, const WallSizes& sizes) const;
  void draw_lines(Canvas& canvas, Box rest, const WallSizes& sizes) const;
  void draw_paragraph(Canvas& canvas, const Box& box, bool with_fresh) const;

  const Book& book_;
  const Day& day_;
  std::vector<Fresh> fresh_;  // new bars, neighbours put together
  int fresh_chunks_ = 0;
  std::vector<Count> counts_;
};

}  // namespace cahier
