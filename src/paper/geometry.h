// Places on the page: millimetres, origin at its top left corner, y downwards.
#pragma once

#include <algorithm>
#include <vector>

namespace cahier {

struct Point {
  double x = 0;
  double y = 0;
  bool operator==(const Point&) const = default;
};

struct Box {
  double x = 0;
  double y = 0;
  double width = 0;
  double height = 0;

  double right() const { return x + width; }
  double bottom() const { return y + height; }
  Point centre() const { return {x + width / 2, y + height / 2}; }
  bool operator==(const Box&) const = default;

  Box moved(double dx, double dy) const { return {x + dx, y + dy, width, height}; }
  // Smaller by `margin` on every side (larger when negative).
  Box inset(double margin) const { return inset(margin, margin); }
  Box inset(double across, double down) const {
    return {x + across, y + down, width - 2 * across, height - 2 * down};
  }
  Box without_top(double amount) const { return {x, y + amount, width, height - amount}; }
  Box without_bottom(double amount) const { return {x, y, width, height - amount}; }
  Box without_left(double amount) const { return {x + amount, y, width - amount, height}; }
  Box without_right(double amount) const { return {x, y, width - amount, height}; }
  Box top(double amount) const { return {x, y, width, amount}; }
  Box bottom(double amount) const { return {x, y + height - amount, width, amount}; }
  Box left(double amount) const { return {x, y, amount, height}; }
  Box right(double amount) const { return {x + width - amount, y, amount, height}; }

  bool contains(Point point, double tolerance = 0) const {
    return point.x >= x - tolerance && point.x <= right() + tolerance && point.y >= y - tolerance &&
           point.y <= bottom() + tolerance;
  }
  bool contains(const Box& other, double tolerance = 0) const {
    return contains(Point{other.x, other.y}, tolerance) &&
           contains(Point{other.right(), other.bottom()}, tolerance);
  }
  // Whether the two share an area that is more than `tolerance` wide and high.
  bool overlaps(const Box& other, double tolerance = 0) const {
    return std::min(right(), other.right()) - std::max(x, other.x) > tolerance &&
           std::min(bottom(), other.bottom()) - std::max(y, other.y) > tolerance;
  }
  // The smallest box around both.
  Box around(const Box& other) const {
    const double left_edge = std::min(x, other.x);
    const double top_edge = std::min(y, other.y);
    return {left_edge, top_edge, std::max(right(), other.right()) - left_edge,
            std::max(bottom(), other.bottom()) - top_edge};
  }

  // `count` equal boxes below one another, `gap` apart. REQUIRES: count > 0.
  std::vector<Box> rows(int count, double gap = 0) const {
    std::vector<Box> result;
    const double each = (height - gap * (count - 1)) / count;
    for (int i = 0; i < count; ++i) result.push_back({x, y + i * (each + gap), width, each});
    return result;
  }
  // `count` equal boxes side by side, `gap` apart. REQUIRES: count > 0.
  std::vector<Box> columns(int count, double gap = 0) const {
    std::vector<Box> result;
    const double each = (width - gap * (count - 1)) / count;
    for (int i = 0; i < count; ++i) result.push_back({x + i * (each + gap), y, each, height});
    return result;
  }
  // Boxes side by side whose widths are to each other as `shares`. REQUIRES: their sum > 0.
  std::vector<Box> columns_by_share(const std::vector<double>& shares, double gap = 0) const {
    double sum = 0;
    for (double share : shares) sum += share;
    const double room = width - gap * static_cast<double>(shares.empty() ? 0 : shares.size() - 1);
    std::vector<Box> result;
    double at = x;
    for (double share : shares) {
      result.push_back({at, y, room * share / sum, height});
      at += room * share / sum + gap;
    }
    return result;
  }
};

}  // namespace cahier
