#include "workbook/parts/writing_lines.h"

#include <algorithm>

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
                        const TextStyle& text_style, double least_line) {
  const double room =
      least_line > 0 ? std::max(0.0, row.width - kGap - least_line) : row.width * 2 / 3;
  const Box text = row.left(room).without_bottom(kAboveFoot - 0.6);
  const double used =
      draw_line(canvas, text.bottom(kLabelHeight), label, text_style, Align::left, style::kLeast);
  const double y = row.bottom() - kAboveFoot;
  canvas.line({row.x + used + (used > 0 ? kGap : 0), y}, {row.right(), y}, style::kWritingLine);
}

double labelled_line_width(const Typefaces& typefaces, std::string_view label,
                           const TextStyle& text_style, double line) {
  constexpr double kRounding = 0.1;
  return typefaces.width(label, text_style.face, text_style.size_pt) + kRounding + kGap + line;
}

Box on_label_baseline(const Typefaces& typefaces, const Box& row, const TextStyle& text_style) {
  const auto capitals = [&](const TextStyle& each) {
    return typefaces.metrics(each.face, each.size_pt).cap_height;
  };
  const double middle = kAboveFoot - 0.6 + kLabelHeight / 2;
  const double baseline = middle - capitals(style::kBody) / 2;
  return row.bottom(2 * baseline + capitals(text_style));
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
