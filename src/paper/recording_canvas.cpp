#include "paper/recording_canvas.h"

#include <algorithm>
#include <stdexcept>
#include <utility>

namespace cahier {

namespace {

// What ink that starts at (0, 0) covers once it stands on the page.
Box placed(const Box& ink, Point baseline, Turn turn) {
  if (turn == Turn::none) return ink.moved(baseline.x, baseline.y);
  if (turn == Turn::over)
    return {baseline.x - ink.right(), baseline.y - ink.bottom(), ink.width, ink.height};
  return {baseline.x + ink.y, baseline.y - ink.right(), ink.height, ink.width};
}

Box widened(const Box& box, const std::optional<Stroke>& stroke) {
  return stroke ? box.inset(-stroke->width / 2) : box;
}

struct Extent {
  Box operator()(const DrawnText& text) const { return text.ink; }
  Box operator()(const DrawnLine& line) const {
    const Box box{std::min(line.from.x, line.to.x), std::min(line.from.y, line.to.y),
                  std::abs(line.to.x - line.from.x), std::abs(line.to.y - line.from.y)};
    // Lines end flat, so they are widened across only.
    if (box.height == 0) return box.inset(0, -line.stroke.width / 2);
    if (box.width == 0) return box.inset(-line.stroke.width / 2, 0);
    return box.inset(-line.stroke.width / 2);
  }
  Box operator()(const DrawnRectangle& rectangle) const {
    return widened(rectangle.box, rectangle.paint.stroke);
  }
  Box operator()(const DrawnCircle& circle) const {
    const Box box{circle.centre.x - circle.diameter / 2, circle.centre.y - circle.diameter / 2,
                  circle.diameter, circle.diameter};
    return widened(box, circle.paint.stroke);
  }
  Box operator()(const DrawnOutline& outline) const { return outline.outline.bounds(); }
  Box operator()(const DrawnLink& link) const { return link.area; }
};

}  // namespace

Box extent(const DrawnItem& item) { return std::visit(Extent{}, item); }

std::vector<DrawnText> DrawnPage::texts() const {
  std::vector<DrawnText> result;
  for (const DrawnItem& item : items) {
    if (const auto* text = std::get_if<DrawnText>(&item)) result.push_back(*text);
  }
  return result;
}

std::string DrawnPage::words() const {
  std::string result;
  for (const DrawnText& text : texts()) result += text.text + "\n";
  return result;
}

void RecordingCanvas::keep(DrawnItem item) {
  if (pages_.empty()) throw std::logic_error("drawing before the first page");
  pages_.back().items.push_back(std::move(item));
}

void RecordingCanvas::begin_page(PageSize size) {
  if (!pages_.empty()) pages_.back().items.shrink_to_fit();  // a book may have very many pages
  pages_.push_back({size, {}});
}

DrawnPage RecordingCanvas::take_page(int number) {
  DrawnPage& page = pages_.at(static_cast<std::size_t>(number - 1));
  return {page.size, std::exchange(page.items, {})};
}

PageSize RecordingCanvas::page_size() const {
  if (pages_.empty()) throw std::logic_error("no page has been begun");
  return pages_.back().size;
}

void RecordingCanvas::text(Point baseline, std::string_view text, const TextStyle& style,
                           const Box& within) {
  const Box ink = typefaces().ink(text, style.face, style.size_pt);
  keep(DrawnText{baseline, std::string(text), style, within,
                 ink.width > 0 ? placed(ink, baseline, style.turn) : Box{},
                 typefaces().metrics(style.face, style.size_pt).x_height});
}

void RecordingCanvas::line(Point from, Point to, const Stroke& stroke) {
  keep(DrawnLine{from, to, stroke});
}

void RecordingCanvas::rectangle(const Box& box, const Paint& paint) {
  keep(DrawnRectangle{box, paint});
}

void RecordingCanvas::circle(Point centre, double diameter, const Paint& paint, CircleUse use) {
  keep(DrawnCircle{centre, diameter, paint, use});
}

void RecordingCanvas::fill(const Outline& outline, const Fill& fill) {
  keep(DrawnOutline{outline, fill});
}

void RecordingCanvas::outline_entry(std::string_view title, int level, int page) {
  outline_entries_.push_back({std::string(title), level, page});
}

void RecordingCanvas::link(const Box& area, int page) { keep(DrawnLink{area, page}); }

}  // namespace cahier
