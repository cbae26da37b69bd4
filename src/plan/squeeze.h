// Lays what is required on a short calendar, as tightly as it goes: for dates that leave no room
// for comfort.
#pragma once

#include "plan/recall_reach.h"
#include "plan/run_days.h"
#include "plan/schedule.h"

namespace cahier {

// One way of packing.
struct Packing {
  // Which chunk comes next: the next of the order, those of the next few that fill the day best, or
  // the last of the order.
  enum class Turn { in_order, filling, backward };

  Reach reach = Reach::unsettled;
  Turn turn = Turn::in_order;
  RunPacking runs = RunPacking::late;
  bool recalls_grow = false;  // even at the cost of something new that day
  bool temper_first = false;  // spoken parts and write-outs before anything new and before joins
  bool starts = false;        // cue starts where room is left
  // When not 0: the order of learning, and each day's reach, growth and Temper, as this number
  // mixes them. The same number mixes them the same way.
  unsigned mix = 0;
};

// Stops where it is plain that not everything will find a place; `unplaced` then names only some of
// what does not.
Draft squeeze(const Work& work, const Packing& packing);

}  // namespace cahier
