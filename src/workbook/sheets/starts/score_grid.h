// Narrow columns of dates beside the cue starts, to mark how each went.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "workbook/book.h"

namespace cahier {

// A day on which cue starts are played.
struct ScoreDay {
  std::string label;    // printed upwards; empty for a column whose date is written in
  std::set<int> asked;  // numbers of the cue starts that the plan asks for
  bool begins_month = false;
};

class ScoreGrid {
 public:
  // REQUIRES: everything passed in outlives it.
  ScoreGrid(Book& book, const std::vector<ScoreDay>& columns);

  // Columns of dates that fit in a width; one at least.
  static int columns_in(double width);
  double head_height() const { return head_height_; }
  double height(int cues) const { return head_height_ + style::kRow * cues; }

  // From the top of `box`, as many columns as fit: the days from `first` on, then columns without a
  // date. A heavier line divides months, and sections
  // (or, where most of these have a single start, every four rows).
  void draw(const Box& box, const std::vector<const CueStart*>& cues, std::size_t first) const;

 private:
  void draw_head(const Box& box, const std::vector<Box>& columns, std::size_t first) const;
  void draw_row(const Box& row, const CueStart& cue) const;

  Book& book_;
  const std::vector<ScoreDay>& days_;
  double head_height_;
};

}  // namespace cahier
