// A slice of a page, as wide as the page: how high it is and how it is drawn.
#pragma once

#include <functional>
#include <vector>

#include "paper/geometry.h"

namespace cahier {

struct Strip {
  double height = 0;  // millimetres
  std::function<void(const Box&)> draw;
};

inline double height_of(const std::vector<Strip>& strips) {
  double height = 0;
  for (const Strip& strip : strips) height += strip.height;
  return height;
}

}  // namespace cahier
