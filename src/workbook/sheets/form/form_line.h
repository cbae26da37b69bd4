// One line of the form map: everything the piece file says, at the bars it belongs to.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "workbook/parts/form_layout.h"
#include "workbook/parts/form_strip.h"

namespace cahier {

// What stands on a line above and below its bars, placed so that nothing meets.
class FormLine {
 public:
  // `x` is where the page's content begins. REQUIRES: all but the range outlive the line.
  FormLine(Book& book, const PlannedPiece& piece, const FormLayout& layout, BarRange bars,
           double x);

  // Whether a mark's note is set whole on its line; else its beginning is.
  static bool holds_mark(const Book& book, const FormLayout& layout, const Mark& mark);

  // Millimetres from the labels above to those below.
  double height() const;
  // The bands of all lines.
  static SectionBands bands(const Book& book, const PlannedPiece& piece, const FormLayout& layout);
  // Draws the line with its top at `y`. False when a section's name had to be cut.
  bool draw(const SectionBands& bands, double y) const;

 private:
  // A mark, a change, a repeat; a cue start or a fork.
  struct Label {
    double x = 0;
    double width = 0;
    int row = 0;  // counted away from the bars
    int bar = 0;
    std::string text;
    std::optional<Tempo> tempo;
    int cue = 0;  // number; 0 for a label that is not a cue start
  };
  // Moves labels left where they would leave the line, and onto rows where they would meet.
  // Returns the number of rows.
  int place(std::vector<Label>& labels) const;
  void collect_above();
  void collect_below();
  void add_above(int bar, std::string text, std::optional<Tempo> tempo);
  void draw_above(double y) const;
  void draw_cells(double y) const;
  void draw_repeats(double y) const;
  void draw_phrases(double y) const;
  void draw_chunks(double y) const;
  void draw_below(double y) const;

  void draw_label(std::string_view key, double y, double height) const;

  Book& book_;
  const PlannedPiece& piece_;
  const FormLayout& layout_;
  double x_;
  BarScale scale_;
  std::vector<Label> above_;
  std::vector<Label> below_;
  int rows_above_ = 0;
  int rows_below_ = 0;
};

}  // namespace cahier
