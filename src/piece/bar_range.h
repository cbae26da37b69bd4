// Bars from … to …, inclusive, as printed in the player's own score.
#pragma once

#include <compare>
#include <string>

namespace cahier {

struct BarRange {
  int first = 1;
  int last = 1;

  int size() const { return last - first + 1; }
  bool contains(int bar) const { return first <= bar && bar <= last; }
  bool contains(const BarRange& other) const { return first <= other.first && other.last <= last; }
  bool overlaps(const BarRange& other) const { return first <= other.last && other.first <= last; }
  auto operator<=>(const BarRange&) const = default;
};

}  // namespace cahier
