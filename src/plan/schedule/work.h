// What is laid on the calendar, the way of pacing it, and what comes out.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/plan.h"
#include "plan/schedule/effort.h"
#include "plan/terms.h"

namespace cahier {

// All that is to be planned.
struct Work {
  const Terms& terms;
  const std::vector<Analysis>& analyses;  // one for each piece
  const std::vector<Day>& days;           // the empty calendar, from the first day of the past on

  struct Item {
    int piece;
    int chunk;
  };
  std::vector<Item> order;  // of learning: what is not learned yet
  // What was done, and the index of its first day's date; of the days before `first` none is a
  // practice day.
  std::vector<Day> past{};
  int first = 0;             // index of the plan's first day
  Effort* effort = nullptr;  // spent by every day that is laid out

  int index_of(Date date) const { return static_cast<int>((date - days.front().date).count()); }
};

// One way of pacing.
struct Pace {
  int learn_until = 0;   // last day on which anything new is learned
  bool catch_up = true;  // one practice day a week without anything new
  // As much as each day holds, instead of an even share; joined at once.
  bool eager = false;
  // Run-throughs from when everything is learned on, as many as that takes, not only those asked
  // for.
  bool more_runs = false;
  // Everything is learned and the days cannot hold all that is usual: what finds no place gives
  // way.
  bool last_days = false;
  bool temper = true;
  bool runs = true;
  int chunks = 0;               // how many of the order are learned at all
  bool all_or_nothing = false;  // stops at the first thing that finds no place, and names that one
  // By piece: the day of its last new bars, as an earlier draft of the same pace found, or -1;
  // empty while only an even share of each day can be reckoned with.
  std::vector<int> learned_on{};
};

struct Schedule {
  std::vector<Day> days;
  std::vector<Unplaced> let_go{};  // what was asked for and gave way
  std::vector<Unplaced> unplaced;  // empty when everything asked of this pace found its place
};

}  // namespace cahier
