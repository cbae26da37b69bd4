#include "paper/placement.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace cahier {
namespace {

Turn turned(Turn turn) {
  switch (turn) {
    case Turn::none:
      return Turn::upwards;
    case Turn::upwards:
      return Turn::over;
    case Turn::over:
      break;
  }
  throw std::logic_error("a page is turned once only");
}

class Placer {
 public:
  Placer(Canvas& canvas, const PageSize& size, const Placement& placement,
         const std::function<int(int)>& page_of)
      : canvas_(canvas), size_(size), placement_(placement), page_of_(page_of) {}

  void operator()(const DrawnText& text) const {
    TextStyle style = text.style.at(text.style.size_pt * placement_.scale);
    if (placement_.turned) style.turn = turned(style.turn);
    canvas_.text(placed(text.baseline), text.text, style, placed(text.within));
  }
  void operator()(const DrawnLine& line) const {
    canvas_.line(placed(line.from), placed(line.to), placed(line.stroke));
  }
  void operator()(const DrawnRectangle& rectangle) const {
    canvas_.rectangle(placed(rectangle.box), placed(rectangle.paint));
  }
  void operator()(const DrawnCircle& circle) const {
    canvas_.circle(placed(circle.centre), circle.diameter * placement_.scale, placed(circle.paint),
                   circle.use);
  }
  void operator()(const DrawnOutline& outline) const {
    canvas_.fill(placed(outline.outline), outline.fill);
  }
  void operator()(const DrawnLink& link) const {
    canvas_.link(placed(link.area), page_of_(link.page));
  }

  Box placed(const Box& box) const {
    const Point first = placed(Point{box.x, box.y});
    const Point second = placed(Point{box.right(), box.bottom()});
    return {std::min(first.x, second.x), std::min(first.y, second.y), std::abs(second.x - first.x),
            std::abs(second.y - first.y)};
  }

 private:
  Point placed(Point point) const {
    const Point on_page = placement_.turned ? Point{point.y, size_.width - point.x} : point;
    return {placement_.at.x + on_page.x * placement_.scale,
            placement_.at.y + on_page.y * placement_.scale};
  }
  Stroke placed(Stroke stroke) const {
    stroke.width *= placement_.scale;
    stroke.dash *= placement_.scale;
    stroke.gap *= placement_.scale;
    return stroke;
  }
  Paint placed(Paint paint) const {
    if (paint.stroke) paint.stroke = placed(*paint.stroke);
    return paint;
  }
  Outline placed(const Outline& outline) const {
    Outline result;
    for (const OutlineStep& step : outline.steps()) {
      switch (step.kind) {
        case OutlineStep::Kind::move:
          result.move_to(placed(step.to));
          break;
        case OutlineStep::Kind::line:
          result.line_to(placed(step.to));
          break;
        case OutlineStep::Kind::curve:
          result.curve_to(placed(step.first), placed(step.second), placed(step.to));
          break;
        case OutlineStep::Kind::close:
          result.close();
          break;
      }
    }
    return result;
  }

  Canvas& canvas_;
  const PageSize& size_;
  const Placement& placement_;
  const std::function<int(int)>& page_of_;
};

}  // namespace

void draw_placed(Canvas& canvas, const DrawnPage& page, const Placement& placement,
                 const std::function<int(int)>& page_of) {
  const Placer placer(canvas, page.size, placement, page_of);
  for (const DrawnItem& item : page.items) std::visit(placer, item);
}

}  // namespace cahier
