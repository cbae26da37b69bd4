// Closed shapes of straight lines and curves, filled by the non-zero winding rule.
#pragma once

#include <vector>

#include "paper/geometry.h"

namespace cahier {

struct OutlineStep {
  enum class Kind { move, line, curve, close };
  Kind kind = Kind::move;
  Point to;     // end of the step; unused by close
  Point first;  // control points of a cubic curve
  Point second;
};

class Outline {
 public:
  void move_to(Point to);
  void line_to(Point to);
  void curve_to(Point first, Point second, Point to);
  // A quadratic curve, kept as the cubic one of the same shape.
  void quadratic_to(Point control, Point to);
  void close();
  void append(const Outline& other);

  const std::vector<OutlineStep>& steps() const { return steps_; }
  bool empty() const { return steps_.empty(); }

  // Every point (x, y) becomes (x * across + dx, y * down + dy).
  Outline transformed(double across, double down, double dx, double dy) const;
  Outline moved(double dx, double dy) const { return transformed(1, 1, dx, dy); }
  Outline scaled(double factor) const { return transformed(factor, factor, 0, 0); }
  // One outline for each closed contour.
  std::vector<Outline> contours() const;

  // The smallest box around what is filled, curves measured at their true extremes.
  Box bounds() const;

  static Outline rectangle(const Box& box);
  static Outline ellipse(Point centre, double radius_across, double radius_down);

 private:
  std::vector<OutlineStep> steps_;
};

}  // namespace cahier
