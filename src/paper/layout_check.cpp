#include "paper/layout_check.h"

#include <fmt/format.h>

#include <cmath>

namespace cahier {

namespace {

// A tenth of a millimetre of shared area is too little to see: not an overlap.
constexpr double kTolerance = 0.1;
// How far an item may leave its box or the margins: rounding only.
constexpr double kHair = 0.02;

std::string where(const Box& box) {
  return fmt::format("at {:.1f},{:.1f} mm ({:.1f} x {:.1f})", box.x, box.y, box.width, box.height);
}

std::string quoted(const DrawnText& text) { return fmt::format("the text \"{}\"", text.text); }

bool is_blank(const DrawnText& text) { return text.ink.width <= 0; }

// Whether a straight line passes through a box, by clipping it to the box (Liang, Barsky).
bool crosses(Point from, Point to, const Box& box) {
  if (box.width <= 0 || box.height <= 0) return false;
  double enter = 0;
  double leave = 1;
  const auto clip = [&](double start, double delta, double least, double most) {
    if (delta == 0) return start > least && start < most;
    double near = (least - start) / delta;
    double far = (most - start) / delta;
    if (near > far) std::swap(near, far);
    enter = std::max(enter, near);
    leave = std::min(leave, far);
    return enter < leave;
  };
  return clip(from.x, to.x - from.x, box.x, box.right()) &&
         clip(from.y, to.y - from.y, box.y, box.bottom());
}

// A stroked line has a width: the ink box grows by half of it.
bool crosses(Point from, Point to, const Stroke& stroke, const Box& ink) {
  return crosses(from, to, ink.inset(kTolerance / 2 - stroke.width / 2));
}

bool edge_crosses(const Box& box, double width, const Box& ink) {
  const Stroke stroke{width, 0, 0, 0, false};
  const Point a{box.x, box.y};
  const Point b{box.right(), box.y};
  const Point c{box.right(), box.bottom()};
  const Point d{box.x, box.bottom()};
  return crosses(a, b, stroke, ink) || crosses(b, c, stroke, ink) || crosses(c, d, stroke, ink) ||
         crosses(d, a, stroke, ink);
}

// The edge of a circle goes through a box when the box has points on both sides of it.
bool edge_crosses(Point centre, double radius, const Box& ink) {
  const double nearest_x = std::clamp(centre.x, ink.x, ink.right()) - centre.x;
  const double nearest_y = std::clamp(centre.y, ink.y, ink.bottom()) - centre.y;
  const double farthest_x = std::max(std::abs(ink.x - centre.x), std::abs(ink.right() - centre.x));
  const double farthest_y = std::max(std::abs(ink.y - centre.y), std::abs(ink.bottom() - centre.y));
  return std::hypot(nearest_x, nearest_y) < radius && std::hypot(farthest_x, farthest_y) > radius;
}

bool is_line(const std::optional<Stroke>& stroke) { return stroke && !stroke->backdrop; }
bool is_solid(const std::optional<Fill>& fill) { return fill && !fill->backdrop; }

// In words, how an item spoils a text; empty when it does not. `later`: painted after the text.
struct Spoils {
  const DrawnText& text;
  bool later = false;

  std::string operator()(const DrawnText& other) const {
    if (!later || is_blank(other) || !other.ink.overlaps(text.ink, kTolerance)) return {};
    return fmt::format("meets the text \"{}\"", other.text);
  }
  std::string operator()(const DrawnLine& line) const {
    if (line.stroke.backdrop || !crosses(line.from, line.to, line.stroke, text.ink)) return {};
    return fmt::format("is crossed by a line from {:.1f},{:.1f} to {:.1f},{:.1f}", line.from.x,
                       line.from.y, line.to.x, line.to.y);
  }
  std::string operator()(const DrawnRectangle& rectangle) const {
    const Paint& paint = rectangle.paint;
    if (later && paint.fill && rectangle.box.overlaps(text.ink, kTolerance)) {
      return "is painted over by the rectangle " + where(rectangle.box);
    }
    const double width = is_line(paint.stroke) ? paint.stroke->width : 0;
    if (!is_line(paint.stroke) && !is_solid(paint.fill)) return {};
    if (!edge_crosses(rectangle.box, width, text.ink)) return {};
    return "is crossed by the edge of the rectangle " + where(rectangle.box);
  }
  std::string operator()(const DrawnCircle& circle) const {
    const Box area = extent(circle);
    if (later && circle.paint.fill &&
        area.inset(area.width * 0.15).overlaps(text.ink, kTolerance)) {
      return "is painted over by the circle " + where(area);
    }
    if (!is_line(circle.paint.stroke) && !is_solid(circle.paint.fill)) return {};
    if (!edge_crosses(circle.centre, circle.diameter / 2, text.ink.inset(kTolerance / 2))) {
      return {};
    }
    return "is crossed by the circle " + where(area);
  }
  std::string operator()(const DrawnOutline& outline) const {
    if (outline.fill.backdrop) return {};
    const Box area = extent(outline);
    if (!area.overlaps(text.ink, kTolerance)) return {};
    for (const Outline& contour : outline.outline.contours()) {
      const Box part = contour.bounds();
      if (part.overlaps(text.ink, kTolerance)) return "meets the shape " + where(part);
    }
    return {};
  }
  std::string operator()(const DrawnLink&) const { return {}; }
};

struct Named {
  std::string operator()(const DrawnText& text) const { return quoted(text); }
  std::string operator()(const DrawnLine& line) const { return "the line " + where(extent(line)); }
  std::string operator()(const DrawnRectangle& item) const {
    return "the rectangle " + where(extent(item));
  }
  std::string operator()(const DrawnCircle& item) const {
    return "the circle " + where(extent(item));
  }
  std::string operator()(const DrawnOutline& item) const {
    return "the shape " + where(extent(item));
  }
  std::string operator()(const DrawnLink& link) const { return "the link " + where(link.area); }
};

// Relative luminance contrast of a grey on white, both from 0 to 1: white 0, black 1.
constexpr double kPalestText = 0.5;

void check_text(const DrawnText& text, std::vector<std::string>& found) {
  if (is_blank(text)) return;
  if (!text.within.contains(text.ink, kHair)) {
    found.push_back(fmt::format("{} leaves its box: ink {}, box {}", quoted(text), where(text.ink),
                                where(text.within)));
  }
  if (text.text.ends_with("…"))
    found.push_back(fmt::format("{} ends in an ellipsis", quoted(text)));
  if (text.style.role == TextRole::fine_print) {
    if (text.style.size_pt < kLeastFinePrint) {
      found.push_back(fmt::format("{} is set in {:.2f} pt, fine print needs {} pt", quoted(text),
                                  text.style.size_pt, kLeastFinePrint));
    }
  } else if (const double least = least_x_height(text.style.role); text.x_height < least - 1e-9) {
    found.push_back(
        fmt::format("{} has an x-height of {:.2f} mm, read from that far it needs {} mm",
                    quoted(text), text.x_height, least));
  }
  if (text.style.grey > kPalestText) {
    found.push_back(
        fmt::format("{} is too pale to read: grey {:.2f}", quoted(text), text.style.grey));
  }
}

void check_item(const DrawnItem& item, const Box& inside, int page_count,
                std::vector<std::string>& found) {
  if (const auto* text = std::get_if<DrawnText>(&item)) {
    check_text(*text, found);
    if (is_blank(*text)) return;
  }
  if (const Box box = extent(item); !inside.contains(box, kHair)) {
    found.push_back(
        fmt::format("{} lies outside the margins {}", std::visit(Named{}, item), where(inside)));
  }
  if (const auto* circle = std::get_if<DrawnCircle>(&item);
      circle != nullptr && circle->use == CircleUse::tick &&
      circle->diameter < kLeastTickDiameter - 1e-9) {
    found.push_back(fmt::format("a tick circle of {:.2f} mm is under {} mm: {}", circle->diameter,
                                kLeastTickDiameter, where(extent(item))));
  }
  if (const auto* link = std::get_if<DrawnLink>(&item);
      link != nullptr && (link->page < 1 || link->page > page_count)) {
    found.push_back(fmt::format("{} leads to page {}, there are {}", std::visit(Named{}, item),
                                link->page, page_count));
  }
}

}  // namespace

double least_x_height(TextRole role) {
  switch (role) {
    case TextRole::desk:
      return 1.4;
    case TextRole::stand:
      return 2.4;
    case TextRole::wall:
      return 3.5;
    case TextRole::fine_print:
      break;
  }
  return 0;
}

double least_size(const Typefaces& typefaces, Face face, TextRole role) {
  if (role == TextRole::fine_print) return kLeastFinePrint;
  return least_x_height(role) / typefaces.metrics(face, 1).x_height;
}

std::vector<std::string> faults(const RecordingCanvas& canvas, const Margins& margins) {
  std::vector<std::string> result;
  for (std::size_t i = 0; i < canvas.pages().size(); ++i) {
    const DrawnPage& page = canvas.pages()[i];
    const int number = static_cast<int>(i) + 1;
    std::vector<std::string> found;
    for (std::size_t at = 0; at < page.items.size(); ++at) {
      check_item(page.items[at], margins.inside(page.size, number), canvas.page_count(), found);
      const auto* text = std::get_if<DrawnText>(&page.items[at]);
      if (text == nullptr || is_blank(*text)) continue;
      for (std::size_t other = 0; other < page.items.size(); ++other) {
        if (other == at) continue;
        const std::string fault = std::visit(Spoils{*text, other > at}, page.items[other]);
        if (!fault.empty()) found.push_back(quoted(*text) + " " + fault);
      }
    }
    for (const std::string& fault : found) {
      result.push_back(fmt::format("page {}: {}", number, fault));
    }
  }
  return result;
}

}  // namespace cahier
