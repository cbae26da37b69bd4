// What a plan leaves out, by kind.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// Work of one kind that finds no place for one reason.
struct LeftOut {
  int piece = 0;
  Drill drill = Drill::learn;
  Why why = Why::no_room_to_learn;
  double minutes = 0;
  int tasks = 0;
  std::vector<BarRange> bars;  // in bar order, neighbours put together
};

// In the order of the plan's `unplaced`.
std::vector<LeftOut> left_out_of(const Plan& plan);

}  // namespace cahier
