// Lays the work on the calendar, day by day, for one way of pacing it.
#pragma once

#include <vector>

#include "plan/anatomy.h"
#include "plan/plan.h"
#include "plan/terms.h"

namespace cahier {

// All that is to be planned.
struct Work {
  const Terms& terms;
  const std::vector<Anatomy>& anatomies;  // one for each piece
  const std::vector<Day>& days;           // the empty calendar

  struct Item {
    int piece;
    int chunk;
  };
  std::vector<Item> order;  // of learning
};

// Chunks in the order they are learned: forward, backward (the last section first) or hardest
// section first; within a section always forward. Several pieces take turns by their size.
std::vector<Work::Item> learning_order(const std::vector<Anatomy>& anatomies, Order order);

// The sections of one piece in that order, by index.
std::vector<int> sections_in_order(const Anatomy& anatomy, Order order);

// One way of pacing.
struct Pace {
  int learn_until = 0;   // last day on which anything new is learned
  bool catch_up = true;  // one practice day a week without anything new
  bool eager = false;    // as much as each day holds, instead of an even share; joined at once
  bool temper = true;
  bool runs = true;
  int chunks = 0;  // how many of the order are learned at all
};

struct Draft {
  std::vector<Day> days;
  std::vector<Unplaced> unplaced;  // empty when everything asked of this pace found its place
};

Draft lay_out(const Work& work, const Pace& pace);

}  // namespace cahier
