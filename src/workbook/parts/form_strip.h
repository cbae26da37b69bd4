// Sections as bands in which what comes back looks alike; the whole piece on one line.
#pragma once

#include <vector>

#include "workbook/book.h"
#include "workbook/parts/form_layout.h"

namespace cahier {

// For each section the number of its pattern: 0 for what never comes back; a section that does
// has the number of the section it is learned in, counted from 1.
std::vector<int> form_patterns(const PlannedPiece& piece);

// The largest style in which the names fit in bands `height` high, the same for the whole piece.
TextStyle band_style(const Book& book, const PlannedPiece& piece, double bar_width, double height);

// The sections of a piece as bands, alike on all lines of a bar's width.
class SectionBands {
 public:
  // REQUIRES: the piece outlives the bands.
  SectionBands(const Book& book, const PlannedPiece& piece, double bar_width, double height);

  // The bands on a line, each with its name where there is room, returns with the bars they
  // repeat. The edge of a band that goes on to another line is left open. False when a name had to
  // be cut or left out where its section begins.
  bool draw(Book& book, const BarScale& scale, double y) const;

 private:
  const PlannedPiece& piece_;
  double height_;
  std::vector<int> patterns_;
  TextStyle type_;
};

// Bar numbers over a line: where sections begin, then where chunks begin, as far as they do not
// meet. `parts` are those of the whole piece.
void draw_bar_numbers(Book& book, const PlannedPiece& piece, const std::vector<FormPart>& parts,
                      const BarScale& scale, double y, double height);

// The whole piece on one line: sections with their first bars, the beginnings of chunks and the
// cue starts' numbers where they do not meet.
void draw_form_strip(Book& book, const PlannedPiece& piece, const Box& box);
inline constexpr double kFormStripHeight = 18;

}  // namespace cahier
