#include "workbook/sheets/child/child_pages.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "workbook/parts/writing_lines.h"

namespace cahier {
namespace {

constexpr double kWidePage = 180;  // millimetres
constexpr double kLeastShape = 6;
constexpr Stroke kOutline{0.5, style::kDark, 0, 0, false};
constexpr double kAroundShape = 0.5;
constexpr double kShapeGap = 2 * kGrid;
constexpr int kStarPoints = 5;
constexpr double kStarInner = 0.45;  // of its outer radius

// Body, heading and title.
struct ChildSizes {
  double body;
  double heading;
  double great;
};

ChildSizes sizes_for(const Print& print) {
  if (print.laid_out(style::kSizeChild) <= style::kSize2)
    return {style::kSize2, style::kSize3, style::kSize4};
  if (print.paper.width < kWidePage) return {style::kSizeChild, style::kSize4, style::kSize5};
  return {style::kSize4, style::kSize5, style::kSize6};
}

TextStyle child_style(Face face, double size) {
  return {face, size, style::kDark, TextRole::desk, Turn::none};
}

// Corners on a ring, from its top; every second one nearer to its middle.
void draw_corners(Canvas& canvas, const Box& box, int corners, double second) {
  const double radius = std::min(box.width, box.height) / 2 - kOutline.width / 2;
  const auto corner = [&](int at) {
    const double turn = 2 * std::numbers::pi * at / corners - std::numbers::pi / 2;
    const double far = radius * (at % 2 == 1 ? second : 1);
    return Point{box.centre().x + far * std::cos(turn), box.centre().y + far * std::sin(turn)};
  };
  for (int at = 0; at < corners; ++at) canvas.line(corner(at), corner(at + 1), kOutline);
}

}  // namespace

TextStyle child_text(const Print& print) { return child_style(Face::sans, sizes_for(print).body); }
TextStyle child_strong(const Print& print) {
  return child_style(Face::sans_bold, sizes_for(print).body);
}
TextStyle child_heading(const Print& print) {
  return child_style(Face::sans_bold, sizes_for(print).heading);
}
TextStyle child_great(const Print& print) {
  return child_style(Face::sans_bold, sizes_for(print).great);
}

std::vector<double> child_sizes(const Print& print) {
  const ChildSizes sizes = sizes_for(print);
  std::vector<double> all = {sizes.heading, sizes.body};
  if (sizes.body > style::kSizeChild) all.push_back(style::kSizeChild);
  return all;
}

double shape_beside(const TextStyle& style) {
  return std::max(kLeastShape, line_pitch(style.size_pt));
}

void draw_shape(Canvas& canvas, const Box& box, Shape shape) {
  const double side = std::min(box.width, box.height) - 2 * kAroundShape;
  const Box square{box.centre().x - side / 2, box.centre().y - side / 2, side, side};
  switch (shape) {
    case Shape::circle:
      canvas.circle(square.centre(), side - kOutline.width, {kOutline, {}}, CircleUse::tick);
      return;
    case Shape::square:
      canvas.rectangle(square.inset(side / 12 + kOutline.width / 2), {kOutline, {}});
      return;
    case Shape::diamond:
      draw_corners(canvas, square, 4, 1);
      return;
    case Shape::triangle:
      draw_corners(canvas, square, 3, 1);
      return;
    case Shape::star:
      draw_corners(canvas, square, 2 * kStarPoints, kStarInner);
      return;
  }
}

ChildPages::ChildPages(Book& book, std::string onward) : book_(book), onward_(std::move(onward)) {
  begin_page();
}

void ChildPages::begin_page() {
  page_ = book_.open_bare_page();
  const std::string& student = book_.print().names.student;
  if (student.empty()) return;
  const TextStyle style = child_style(Face::sans, style::kSizeChild);
  const TextBlock name(book_.typefaces(), student, style, page_.width);
  name.draw(book_.canvas(), page_.bottom(name.height()), Align::right);
  page_ = page_.without_bottom(name.height());
}

void ChildPages::open() {
  begin_page();
  used_ = 0;
  if (!onward_.empty()) text(onward_, child_strong(book_.print()));
}

void ChildPages::keep(double height) {
  if (used_ > 0 && used_ + height > page_.height + 1e-6) open();
}

Box ChildPages::take(double height) {
  keep(height);
  const Box box = rest().top(height);
  used_ += height;
  return box;
}

void ChildPages::skip(double height) { used_ = std::min(page_.height, used_ + height); }

void ChildPages::text(std::string_view text, const TextStyle& style) {
  const TextBlock block(book_.typefaces(), text, style, page_.width);
  block.draw(book_.canvas(), take(block.height()));
}

void ChildPages::point(std::string_view text, Shape shape) {
  const TextStyle style = child_text(book_.print());
  const double side = shape_beside(style);
  const TextBlock block(book_.typefaces(), text, style, page_.width - side - kShapeGap);
  const Box row = take(std::max(block.height(), side));
  draw_shape(book_.canvas(), row.left(side).top(side), shape);
  block.draw(book_.canvas(), row.without_left(side + kShapeGap));
  skip(kGrid);
}

bool ChildPages::has_room_beside(std::string_view label) const {
  const TextStyle style = child_text(book_.print());
  return book_.typefaces().width(label, style.face, style.size_pt) <= page_.width / 2;
}

double ChildPages::write_in_height(std::string_view label) const {
  if (has_room_beside(label)) return style::kWritingRow;
  return style::kWritingRow +
         TextBlock(book_.typefaces(), label, child_text(book_.print()), page_.width).height();
}

void ChildPages::write_in(std::string_view label) {
  const TextStyle style = child_text(book_.print());
  if (!has_room_beside(label)) {
    text(label, style);
    draw_writing_lines(book_.canvas(), take(style::kWritingRow), 1);
    return;
  }
  const Box row = take(style::kWritingRow);
  const double taken = draw_line(book_.canvas(), row.bottom(line_pitch(style.size_pt)), label,
                                 style, Align::left, style.size_pt);
  const double y = row.bottom() - style::kWritingLine.width;
  book_.canvas().line({row.x + taken + kShapeGap, y}, {row.right(), y}, style::kWritingLine);
}

void ChildPages::shapes(int count, Shape shape, double size) {
  const double step = size + kShapeGap;
  const int a_row = std::max(1, static_cast<int>((page_.width + kShapeGap) / step));
  for (int first = 0; first < count; first += a_row) {
    const Box row = take(step);
    for (int at = 0; at < std::min(a_row, count - first); ++at)
      draw_shape(book_.canvas(), row.top(size).without_left(at * step).left(size), shape);
  }
}

}  // namespace cahier
