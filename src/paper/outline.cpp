#include "paper/outline.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace cahier {

namespace {

using Kind = OutlineStep::Kind;

// Grows a range by the extremes of one coordinate of a cubic curve.
void include_curve(double& least, double& most, double start, double first, double second,
                   double end) {
  const auto include = [&](double value) {
    least = std::min(least, value);
    most = std::max(most, value);
  };
  include(end);
  const auto at = [&](double t) {
    const double u = 1 - t;
    return u * u * u * start + 3 * u * u * t * first + 3 * u * t * t * second + t * t * t * end;
  };
  // The derivative a t^2 + b t + c vanishes at the extremes.
  const double a = -start + 3 * first - 3 * second + end;
  const double b = 2 * (start - 2 * first + second);
  const double c = first - start;
  const auto include_at = [&](double t) {
    if (t > 0 && t < 1) include(at(t));
  };
  if (std::abs(a) < 1e-12) {
    if (std::abs(b) > 1e-12) include_at(-c / b);
    return;
  }
  const double discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return;
  include_at((-b + std::sqrt(discriminant)) / (2 * a));
  include_at((-b - std::sqrt(discriminant)) / (2 * a));
}

}  // namespace

void Outline::move_to(Point to) { steps_.push_back({Kind::move, to, {}, {}}); }

void Outline::line_to(Point to) { steps_.push_back({Kind::line, to, {}, {}}); }

void Outline::curve_to(Point first, Point second, Point to) {
  steps_.push_back({Kind::curve, to, first, second});
}

void Outline::quadratic_to(Point control, Point to) {
  const Point from = steps_.empty() ? control : steps_.back().to;
  const auto towards = [&](Point end) {
    return Point{end.x + (control.x - end.x) * 2 / 3, end.y + (control.y - end.y) * 2 / 3};
  };
  curve_to(towards(from), towards(to), to);
}

void Outline::close() { steps_.push_back({Kind::close, {}, {}, {}}); }

void Outline::append(const Outline& other) {
  steps_.insert(steps_.end(), other.steps_.begin(), other.steps_.end());
}

Outline Outline::transformed(double across, double down, double dx, double dy) const {
  Outline result = *this;
  for (OutlineStep& step : result.steps_) {
    for (Point* point : {&step.to, &step.first, &step.second}) {
      *point = {point->x * across + dx, point->y * down + dy};
    }
  }
  return result;
}

std::vector<Outline> Outline::contours() const {
  std::vector<Outline> result;
  for (const OutlineStep& step : steps_) {
    if (step.kind == Kind::move) result.emplace_back();
    if (!result.empty()) result.back().steps_.push_back(step);
  }
  return result;
}

Box Outline::bounds() const {
  constexpr double kFar = std::numeric_limits<double>::max();
  Point least{kFar, kFar};
  Point most{-kFar, -kFar};
  Point at;
  bool any = false;
  for (const OutlineStep& step : steps_) {
    if (step.kind == Kind::close) continue;
    any = true;
    const bool curved = step.kind == Kind::curve;
    const Point from = curved ? at : step.to;
    include_curve(least.x, most.x, from.x, curved ? step.first.x : step.to.x,
                  curved ? step.second.x : step.to.x, step.to.x);
    include_curve(least.y, most.y, from.y, curved ? step.first.y : step.to.y,
                  curved ? step.second.y : step.to.y, step.to.y);
    at = step.to;
  }
  if (!any) return {};
  return {least.x, least.y, most.x - least.x, most.y - least.y};
}

Outline Outline::rectangle(const Box& box) {
  Outline result;
  result.move_to({box.x, box.y});
  result.line_to({box.right(), box.y});
  result.line_to({box.right(), box.bottom()});
  result.line_to({box.x, box.bottom()});
  result.close();
  return result;
}

Outline Outline::ellipse(Point centre, double radius_across, double radius_down) {
  // Four cubic curves follow an ellipse within 0.03 % when their handles are this long.
  constexpr double kHandle = 0.5522847498;
  const double hx = radius_across * kHandle;
  const double hy = radius_down * kHandle;
  const double left = centre.x - radius_across;
  const double right = centre.x + radius_across;
  const double top = centre.y - radius_down;
  const double bottom = centre.y + radius_down;
  Outline result;
  result.move_to({right, centre.y});
  result.curve_to({right, centre.y + hy}, {centre.x + hx, bottom}, {centre.x, bottom});
  result.curve_to({centre.x - hx, bottom}, {left, centre.y + hy}, {left, centre.y});
  result.curve_to({left, centre.y - hy}, {centre.x - hx, top}, {centre.x, top});
  result.curve_to({centre.x + hx, top}, {right, centre.y - hy}, {right, centre.y});
  result.close();
  return result;
}

}  // namespace cahier
