// The slow and counted passes of a plan, stretch by stretch.
#pragma once

#include <algorithm>
#include <map>
#include <string>
#include <utility>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

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

// Whether a tempo of the plan is slower than a metronome goes.
bool has_slow_tempi(const Plan& plan);

// The sections that a stretch touches.
std::string sections_in(const Words& words, const PlannedPiece& piece, BarRange bars);

}  // namespace cahier
