// Lays what is required on a short calendar, as tightly as it goes, and cue starts where room is
// left: for dates that leave no room for comfort.
#pragma once

#include "plan/schedule.h"

namespace cahier {

// One way of packing.
struct Packing {
  // How far a recall that is due reaches to its neighbours.
  enum class Reach { due, unsettled, ripe, all };

  Reach reach = Reach::unsettled;
  bool out_of_order = false;  // chunks that fill the day better may come before their turn
  bool recalls_grow = false;  // even at the cost of something new that day
  bool temper_first = false;  // spoken parts and write-outs before anything new
};

Draft squeeze(const Work& work, const Packing& packing);

}  // namespace cahier
