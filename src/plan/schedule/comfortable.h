// Lays the work on the calendar, day by day, for one way of pacing it.
#pragma once

#include <vector>

#include "plan/chunks/anatomy.h"
#include "plan/plan.h"
#include "plan/terms.h"

namespace cahier {

// All that is to be planned.
struct Work {
  const Terms& terms;
  const std::vector<Anatomy>& anatomies;  // one for each piece
  const std::vector<Day>& days;           // the empty calendar, from the first day of the past on

  struct Item {
    int piece;
    int chunk;
  };
  std::vector<Item> order;  // of learning: what is not learned yet
  // What was done, and the index of its first day's date; of the days before `first` none is a
  // practice day.
  std::vector<Day> past{};
  int first = 0;  // index of the plan's first day

  int index_of(Date date) const { return static_cast<int>((date - days.front().date).count()); }
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
