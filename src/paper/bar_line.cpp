#include "paper/bar_line.h"

#include <string_view>

namespace cahier {
namespace {

// What a bar line is made of, from left to right: '|' thin, '#' thick, ':' dots.
std::string_view strokes_of(BarLine kind) {
  switch (kind) {
    case BarLine::thin:
      return "|";
    case BarLine::two_thin:
      return "||";
    case BarLine::final:
      return "|#";
    case BarLine::closes_repeat:
      return ":|#";
    case BarLine::opens_repeat:
      return "#|:";
    case BarLine::closes_and_opens:
      return ":|#|:";
  }
  return "|";
}

double width_of(char stroke) {
  return stroke == '|' ? kThinBarLine : stroke == '#' ? kThickBarLine : kRepeatDot;
}

double separation(char left, char right) {
  return left == ':' || right == ':' ? kRepeatDotSeparation : kBarLineSeparation;
}

double width_of(std::string_view strokes) {
  double width = 0;
  for (std::size_t at = 0; at < strokes.size(); ++at) {
    if (at > 0) width += separation(strokes[at - 1], strokes[at]);
    width += width_of(strokes[at]);
  }
  return width;
}

// The dots stand in the two spaces about the middle line.
void draw_dots(Canvas& canvas, double left, const std::vector<double>& middles, double space) {
  const double radius = kRepeatDot / 2 * space;
  for (const double middle : middles)
    for (const double offset : {-space / 2, space / 2})
      canvas.fill(Outline::ellipse({left + radius, middle + offset}, radius, radius), {});
}

}  // namespace

double bar_line_width(BarLine kind) { return width_of(strokes_of(kind)); }

double bar_line_lead(BarLine kind) {
  const std::string_view strokes = strokes_of(kind);
  if (strokes.back() != ':') return 0;
  return bar_line_width(kind) - width_of(strokes.substr(0, strokes.find('#') + 1));
}

void draw_bar_line(Canvas& canvas, BarLine kind, double left, const std::vector<BarLineRun>& runs,
                   const std::vector<double>& middles, double space) {
  const std::string_view strokes = strokes_of(kind);
  double x = left;
  for (std::size_t at = 0; at < strokes.size(); ++at) {
    if (at > 0) x += separation(strokes[at - 1], strokes[at]) * space;
    const double width = width_of(strokes[at]) * space;
    if (strokes[at] == ':') draw_dots(canvas, x, middles, space);
    if (strokes[at] != ':')
      for (const BarLineRun& run : runs)
        canvas.line({x + width / 2, run.top}, {x + width / 2, run.bottom}, {width, 0, 0, 0, true});
    x += width;
  }
}

}  // namespace cahier
