// What one practice day of a tight schedule holds, decided beforehand.
#pragma once

#include <vector>

#include "piece/bar_range.h"

namespace cahier {

struct DayChoice {
  std::vector<BarRange> recalls;
  std::vector<int> learned;  // chunks
  std::vector<BarRange> joins;
  bool forks = false;  // those that wait and are ready are drilled
  int runs = 0;
};

}  // namespace cahier
