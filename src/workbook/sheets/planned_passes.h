// The slow and counted passes of a plan, stretch by stretch.
#pragma once

#include <algorithm>
#include <map>
#include <utility>
#include <vector>

#include "plan/plan.h"

namespace cahier {

struct PlannedPass {
  Date date;
  const Task* task = nullptr;
};
// The passes of one stretch, by date.
struct PassesOfStretch {
  std::vector<PlannedPass> slow;
  std::vector<PlannedPass> counted;

  std::size_t rows() const { return std::max(slow.size(), counted.size()); }
};
// By piece and bars, in that order.
using PassesByStretch = std::map<std::pair<int, BarRange>, PassesOfStretch>;

PassesByStretch passes_by_stretch(const Plan& plan);

}  // namespace cahier
