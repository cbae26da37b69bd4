// A ruled table: a head that is repeated on every page, and rows to fill in.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "paper/text_fitting.h"

namespace cahier {

struct Column {
  std::string head;           // broken into lines; may be empty
  double share = 1;           // of the width
  Align align = Align::left;  // of the head, as its cells are set
  std::string widest{};       // of its cells: it stays on one line, if all columns can have theirs
  double least = 0;           // millimetres that its cells need for what is no text
};

class Table {
 public:
  // Millimetres. A column is at least as wide as the longest word of its head and as its widest
  // cell, if all can be.
  Table(const Typefaces& typefaces, std::vector<Column> columns, double width, double row_height);

  double head_height() const { return head_height_; }
  double row_height() const { return row_height_; }

  // Draws the head at the top of `box` and returns what is left below it.
  Box draw_head(Canvas& canvas, const Box& box) const;
  // The cells of the row at the top of `box`, not ruled.
  std::vector<Box> cells(const Box& box) const;
  // Rules the row at the top of `box` and returns its cells, a little narrower than their columns.
  std::vector<Box> draw_row(Canvas& canvas, const Box& box) const;

 private:
  struct Head {
    TextBlock text;
    double height;
    Align align;
  };
  std::vector<double> widths_;
  std::vector<Head> heads_;
  double width_ = 0;
  double row_height_ = 0;
  double head_height_ = 0;
};

// A text in a table's cell, on one line where that fits, else smaller on two; what is longer is
// cut.
void draw_cell(Canvas& canvas, const Box& cell, std::string_view text, const TextStyle& text_style,
               Align align = Align::left);

}  // namespace cahier
