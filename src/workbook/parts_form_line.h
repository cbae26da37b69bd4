// One line of the form map: everything the piece file says, at the bars it belongs to.
#pragma once

#include "workbook/parts_form_strip.h"

namespace cahier {

// What stands on a line above and below its bars, placed so that nothing meets.
class FormLine {
 public:
  // REQUIRES: book and piece outlive the line.
  FormLine(Book& book, const PlannedPiece& piece, const BarScale& scale);

  // Millimetres from the labels above to those below.
  double height() const;
  // Draws the line with its top at `y`. False when a section's name had to be cut.
  bool draw(double y) const;

 private:
  // A mark, a change, a repeat; a cue start or a fork.
  struct Label {
    double x = 0;
    double width = 0;
    int row = 0;  // counted away from the bars
    int bar = 0;
    std::string text;
    std::optional<Tempo> tempo;
    int cue = 0;  // number; 0 for a label that is none
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

  Book& book_;
  const PlannedPiece& piece_;
  BarScale scale_;
  std::vector<Label> above_;
  std::vector<Label> below_;
  int rows_above_ = 0;
  int rows_below_ = 0;
};

// The signs of the map, for its legend too.
void draw_cue_sign(Canvas& canvas, Point top_left, int number);
double cue_sign_width(int number);
void draw_fork_sign(Canvas& canvas, Point top_left);
void draw_phrase_sign(Canvas& canvas, const Box& box, bool begins, bool ends);
void draw_repeat_sign(Canvas& canvas, double x, double y, double height, bool opens);
// White to dark grey for levels 1 to 5.
std::optional<Fill> level_fill(int level);

}  // namespace cahier
