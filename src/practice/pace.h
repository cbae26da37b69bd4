// How fast this player learns, from what learning really took.
#pragma once

#include <vector>

#include "practice/method.h"

namespace cahier {

// One time that learning took: `ratio` is minutes taken over minutes planned (more than 0).
struct PaceSample {
  int level = 2;  // 1 … 5, of the bars
  double ratio = 1;
  double weight = 1;  // how much of one sample it counts
};

// Factor on the planned minutes, by level; all 1 without samples. The model is in pace.cpp, with
// its source.
ByLevel learn_pace(const Method& method, const std::vector<PaceSample>& samples);

}  // namespace cahier
