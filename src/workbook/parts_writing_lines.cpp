#include "workbook/parts_writing_lines.h"

#include "paper/text_fitting.h"

namespace cahier {
namespace {

constexpr double kAboveFoot = 1.2;  // the line, so that the next row's letters stay clear of it
constexpr double kGap = 1.5;        // between a label and its line
constexpr double kLabelHeight = 5.4;

}  // namespace

void draw_writing_lines(Canvas& canvas, const Box& box, int count) {
  for (int line = 1; line <= count; ++line) {
    const double y = box.y + writing_lines_height(line) - kAboveFoot;
    canvas.line({box.x, y}, {box.right(), y}, style::kWritingLine);
  }
}

void draw_labelled_line(Canvas& canvas, const Box& row, std::string_view label,
                        const TextStyle& text_style) {
  const Box text = row.left(row.width * 2 / 3).without_bottom(kAboveFoot - 0.6);
  const double used =
      draw_line(canvas, text.bottom(kLabelHeight), label, text_style, Align::left, style::kLeast);
  const double y = row.bottom() - kAboveFoot;
  canvas.line({row.x + used + (used > 0 ? kGap : 0), y}, {row.right(), y}, style::kWritingLine);
}

void draw_write_ins(Canvas& canvas, const Box& row, const std::vector<WriteIn>& fields,
                    const TextStyle& text_style) {
  std::vector<double> shares;
  for (const WriteIn& field : fields) shares.push_back(field.share);
  const std::vector<Box> boxes = row.columns_by_share(shares, 4);
  for (std::size_t at = 0; at < fields.size(); ++at)
    draw_labelled_line(canvas, boxes[at], fields[at].label, text_style);
}

}  // namespace cahier
