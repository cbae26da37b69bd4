#include "workbook/parts/table.h"

#include <algorithm>
#include <utility>

#include "workbook/style.h"

namespace cahier {
namespace {

constexpr double kLeastPitch = 1.2;  // of two lines in a cell, to their type size
constexpr double kInset = 1;         // of a cell, at its left and right
constexpr double kHeadFoot = 1.5;    // below the words of the head

// The largest size at which every word of the head fits in a line.
double head_size(const Typefaces& typefaces, std::string_view head, double width) {
  double size = style::kSmall.size_pt;
  while (!head.empty()) {
    const auto space = head.find(' ');
    size = fit_line(typefaces, head.substr(0, space), style::kSmall.at(size), width, style::kLeast)
               .style.size_pt;
    if (space == std::string_view::npos) break;
    head.remove_prefix(space + 1);
  }
  return size;
}

// What the longest word of a head needs in the smallest type.
double least_width(const Typefaces& typefaces, std::string_view head) {
  double widest = 0;
  while (true) {
    const auto space = head.find(' ');
    widest = std::max(
        widest, typefaces.width(head.substr(0, space), style::kSmall.face, style::kLeast) + 0.3);
    if (space == std::string_view::npos) return widest + 2 * kInset;
    head.remove_prefix(space + 1);
  }
}

// By their shares, but never narrower than a word of the head; where that is impossible, by share
// alone.
std::vector<double> column_widths(const Typefaces& typefaces, const std::vector<Column>& columns,
                                  double width) {
  std::vector<double> least;
  double least_sum = 0;
  for (const Column& column : columns) {
    const double cell = std::max(
        typefaces.width(column.widest, style::kBody.face, style::kBody.size_pt), column.least);
    least.push_back(std::max(least_width(typefaces, column.head), cell + 0.3 + 2 * kInset));
    least_sum += least.back();
  }
  std::vector<double> widths(columns.size(), 0.0);
  std::vector<bool> held(columns.size(), false);
  for (bool settled = false; !settled;) {
    double room = width;
    double shares = 0;
    for (std::size_t at = 0; at < columns.size(); ++at)
      held[at] ? room -= widths[at] : shares += columns[at].share;
    settled = true;
    for (std::size_t at = 0; at < columns.size(); ++at) {
      if (held[at]) continue;
      widths[at] = room * columns[at].share / shares;
      if (least_sum > width || widths[at] >= least[at]) continue;
      widths[at] = least[at];
      held[at] = true;
      settled = false;
    }
  }
  return widths;
}

}  // namespace

Table::Table(const Typefaces& typefaces, std::vector<Column> columns, double width,
             double row_height)
    : widths_(column_widths(typefaces, columns, width)), width_(width), row_height_(row_height) {
  for (std::size_t at = 0; at < columns.size(); ++at) {
    const double room = widths_[at] - 2 * kInset;
    const TextStyle text_style = style::kSmall.at(head_size(typefaces, columns[at].head, room));
    TextBlock text(typefaces, columns[at].head, text_style, room);
    const double height = text.height();
    heads_.push_back({std::move(text), height, columns[at].align});
    head_height_ = std::max(head_height_, height + kHeadFoot);
  }
}

Box Table::draw_head(Canvas& canvas, const Box& box) const {
  const Box head{box.x, box.y, width_, head_height_ - kHeadFoot};
  const std::vector<Box> boxes = head.columns_by_share(widths_);
  for (std::size_t at = 0; at < heads_.size(); ++at)
    heads_[at].text.draw(canvas, boxes[at].inset(kInset, 0).bottom(heads_[at].height),
                         heads_[at].align);
  const double y = box.y + head_height_;
  canvas.line({box.x, y}, {box.x + width_, y}, style::kRule);
  return box.without_top(head_height_);
}

std::vector<Box> Table::draw_row(Canvas& canvas, const Box& box) const {
  const Box row{box.x, box.y, width_, row_height_};
  canvas.line({row.x, row.bottom()}, {row.right(), row.bottom()}, style::kHairline);
  std::vector<Box> cells = row.columns_by_share(widths_);
  for (Box& cell : cells) {
    if (cell.x > row.x) canvas.line({cell.x, row.y}, {cell.x, row.bottom()}, style::kHairline);
    cell = cell.inset(kInset, 0.3);
  }
  return cells;
}

std::vector<Box> Table::cells(const Box& box) const {
  std::vector<Box> boxes = Box{box.x, box.y, width_, row_height_}.columns_by_share(widths_);
  for (Box& cell : boxes) cell = cell.inset(kInset, 0.3);
  return boxes;
}

void draw_cell(Canvas& canvas, const Box& cell, std::string_view text, const TextStyle& text_style,
               Align align) {
  const Typefaces& typefaces = canvas.typefaces();
  const bool one_line = !fit_line(typefaces, text, text_style, cell.width, text_style.size_pt).cut;
  const double size = std::max(style::kLeast, text_style.size_pt - 1.5);
  const std::vector<std::string> lines = wrap(typefaces, text, text_style.at(size), cell.width);
  const bool has_room = cell.height >= 2 * kLeastPitch * millimetres(size);
  if (one_line || lines.size() < 2 || !has_room) {
    draw_line(canvas, cell, text, text_style, align, style::kLeast);
    return;
  }
  const double height = std::min(cell.height / 2, line_pitch(size));
  const Box both = cell.inset(0, (cell.height - 2 * height) / 2);
  draw_line(canvas, both.top(height), lines[0], text_style.at(size), align, style::kLeast);
  // The second line takes all that is left, and is cut where that is too much.
  std::string_view rest = text;
  rest.remove_prefix(lines[0].size());
  while (rest.starts_with(' ')) rest.remove_prefix(1);
  draw_line(canvas, both.bottom(height), rest, text_style.at(size), align, style::kLeast);
}

}  // namespace cahier
