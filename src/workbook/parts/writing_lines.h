// Lines to write on.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "paper/canvas.h"
#include "workbook/style.h"

namespace cahier {

// `count` lines across `box`, a writing row apart; the first stands a writing row below its top.
void draw_writing_lines(Canvas& canvas, const Box& box, int count);
constexpr double writing_lines_height(int count) { return style::kWritingRow * count; }

// A label and, from its end to the right edge of `row`, a line to write on at the foot of the row.
// The line is at least `least_line` long, a third of the row unless said; a label that leaves less
// is set smaller. REQUIRES: row.height >= kWritingRow.
void draw_labelled_line(Canvas& canvas, const Box& row, std::string_view label,
                        const TextStyle& text_style, double least_line = 0);
// The width of a row whose label needs no smaller type and whose line is `line` long.
double labelled_line_width(const Typefaces& typefaces, std::string_view label,
                           const TextStyle& text_style, double line);
// Where a text of another size stands in such a row, on the baseline of the labels.
Box on_label_baseline(const Typefaces& typefaces, const Box& row, const TextStyle& text_style);

// Several of them side by side.
struct WriteIn {
  std::string label;
  double share = 1;  // of the width
};
void draw_write_ins(Canvas& canvas, const Box& row, const std::vector<WriteIn>& fields,
                    const TextStyle& text_style);

}  // namespace cahier
