#include "workbook/parts/ticks.h"

#include <algorithm>

#include "paper/text_fitting.h"

namespace cahier {
namespace {

constexpr double kLabelGap = 1.5;   // between a label and its first circle
constexpr double kLabelLine = 4.2;  // millimetres, of one of its lines

double measured(const Typefaces& typefaces, const std::string& label, const TextStyle& style) {
  return label.empty() ? 0 : typefaces.width(label, style.face, style.size_pt) + 0.5;
}

}  // namespace

TickRows::TickRows(const Typefaces& typefaces, const std::vector<TickRow>& rows, double label_width,
                   int circles, double pitch)
    : label_width_(label_width) {
  for (const TickRow& row : rows) {
    Line line = labelled(typefaces, row.label, pitch);
    for (int left = row.count; left > 0; left -= circles) {
      line.circles = std::min(left, circles);
      lines_.push_back(line);
      line.label.clear();
      line.height = pitch;
    }
    if (row.more.empty()) continue;
    const double free = style::kTickStep * (circles - line.circles - 1) - 2 * kLabelGap;
    if (measured(typefaces, row.more, style::kStandText) <= free) {
      lines_.back().more = row.more;
    } else {
      lines_.push_back(labelled(typefaces, row.more, pitch));
      lines_.back().circles = 1;
    }
  }
}

TickRows::Line TickRows::labelled(const Typefaces& typefaces, const std::string& label,
                                  double pitch) const {
  Line line{{}, style::kStandText, 0, pitch, {}};
  if (measured(typefaces, label, line.style) <= label_width_) {
    if (!label.empty()) line.label = {label};
    return line;
  }
  line.style = style::kNote.at(style::kLeast);
  line.label = wrap(typefaces, label, line.style, label_width_);
  line.height = std::max(pitch, kLabelLine * static_cast<double>(line.label.size()));
  return line;
}

double TickRows::label_width(const Typefaces& typefaces, const std::vector<TickRow>& rows,
                             double most) {
  double widest = 0;
  for (const TickRow& row : rows)
    widest = std::max(widest, measured(typefaces, row.label, style::kStandText));
  return std::min(widest, most);
}

double TickRows::width(double label_width, int circles) {
  return (label_width > 0 ? label_width + kLabelGap : 0) + style::kTickStep * circles;
}

double TickRows::height(int first, int count) const {
  double height = 0;
  for (int line = first; line < first + count; ++line) height += lines_[line].height;
  return height;
}

void TickRows::draw(Canvas& canvas, const Box& box, int first, int count) const {
  const double circles_at = width(label_width_, 0);
  Box rest = box;
  for (int at = first; at < first + count; ++at) {
    const Line& line = lines_[at];
    const Box row = rest.top(line.height);
    const double lines_of_label = static_cast<double>(line.label.size());
    Box text = row.left(label_width_);
    if (line.label.size() > 1)
      text = text.inset(0, (line.height - kLabelLine * lines_of_label) / 2);
    for (std::size_t part = 0; part < line.label.size(); ++part) {
      const double height = text.height / lines_of_label;
      draw_line(canvas, text.top(height).moved(0, height * static_cast<double>(part)),
                line.label[part], line.style, Align::right, line.style.size_pt);
    }
    const Box first_circle{row.x + circles_at, row.y, style::kTickStep, row.height};
    for (int circle = 0; circle < line.circles; ++circle)
      draw_tick(canvas, first_circle.moved(style::kTickStep * circle, 0));
    if (!line.more.empty()) {
      const Box behind = row.without_left(circles_at + style::kTickStep * line.circles + kLabelGap);
      const double words =
          draw_line(canvas, behind, line.more, style::kStandText, Align::left, style::kLeastStand);
      draw_tick(canvas, behind.without_left(words + kLabelGap).left(style::kTickStep));
    }
    rest = rest.without_top(line.height);
  }
}

void draw_tick(Canvas& canvas, const Box& box) {
  canvas.circle(box.centre(), style::kTick, {Stroke{0.3, style::kDark, 0, 0, false}, {}},
                CircleUse::tick);
}

}  // namespace cahier
