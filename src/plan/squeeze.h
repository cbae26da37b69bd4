// Lays what is required on a short calendar, as tightly as it goes: for dates that leave no room
// for comfort.
#pragma once

#include "plan/schedule.h"

namespace cahier {

// One way of packing.
struct Packing {
  // How far a recall that is due reaches to its neighbours.
  enum class Reach { due, unsettled, ripe, all };
  // Which chunk comes next: the next of the order, those of the next few that fill the day best, or
  // the last of the order.
  enum class Turn { in_order, filling, backward };
  // Where the run-throughs stand: as many a day as the method allows, at the end, the odd one first
  // or last; the same as soon as everything is learned; or evenly on all days from then on.
  enum class Runs { late, late_odd_last, early, even };

  Reach reach = Reach::unsettled;
  Turn turn = Turn::in_order;
  Runs runs = Runs::late;
  bool recalls_grow = false;  // even at the cost of something new that day
  bool temper_first = false;  // spoken parts and write-outs before anything new and before joins
  bool starts = false;        // cue starts where room is left
};

// Stops where it is plain that not everything will find a place; `unplaced` then names only some of
// what does not.
Draft squeeze(const Work& work, const Packing& packing);

}  // namespace cahier
