// The table that tells which cue start a throw brings.
#pragma once

#include <vector>

#include "workbook/book.h"

namespace cahier {

// Two dice give a row and a column; so do coins, the first of them the row; a single die has its
// faces side by side; a die of twenty faces is a list in columns. The bar to start at is set to be
// read from the music desk.
class ThrowTable {
 public:
  // REQUIRES: everything passed in outlives it.
  ThrowTable(Book& book, const PlannedPiece& piece, const DiceTable& table, double width);

  double height() const;
  // From the top of `box`, as wide as was said.
  void draw(const Box& box) const;

 private:
  struct Cell {
    int row;
    int column;
  };

  bool is_list() const { return table_.faces > kMostHeads; }
  bool is_coins() const { return table_.faces == 2; }
  int throws_for_row() const { return is_list() ? 0 : table_.count / 2; }
  int throws_for_column() const { return table_.count - throws_for_row(); }
  Cell cell_of(const std::vector<int>& outcome) const;
  // What is thrown, from the first of `throws` equal dice on, for the row or column `at`.
  std::vector<int> faces_of(int at, int throws) const;
  std::string heading(int first, int throws) const;

  void draw_row_heads() const;
  void draw_column_heads() const;
  void draw_heads(const Box& box, const std::vector<int>& faces, bool stacked) const;
  void draw_rules() const;
  void draw_start(const Cell& cell, int cue) const;
  void draw_again(const Cell& cell) const;
  Box cell_box(const Cell& cell) const;

  static constexpr int kMostHeads = 6;  // faces that are drawn beside a row or above a column

  Book& book_;
  const PlannedPiece& piece_;
  const DiceTable& table_;
  int rows_ = 1;
  int columns_ = 1;
  bool stacked_ = false;  // the heads of a column stand above one another
  Box grid_;              // at the place of the latest draw(); its width and height always hold
  double left_ = 0;       // millimetres beside and above the grid
  double top_ = 0;
};

}  // namespace cahier
