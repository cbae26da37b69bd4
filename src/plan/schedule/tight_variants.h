// Variants of the tight schedule, to be tried in turn.
#pragma once

#include <vector>

#include "plan/due/recall_reach.h"
#include "plan/due/run_days.h"
#include "plan/schedule/day_choice.h"

namespace cahier {

// One way of putting required work into a short calendar.
struct TightVariant {
  // Which chunk comes next: the next of the order, those of the next few that fill the day best, or
  // the last of the order.
  enum class Turn { in_order, filling, backward };

  Reach reach = Reach::unsettled;
  Turn turn = Turn::in_order;
  RunPlacing runs = RunPlacing::late;
  bool recalls_grow = false;  // even at the cost of something new that day
  bool welcome = false;       // work that no rule asks for, where room is left
  // When not 0, a randomised restart: the order of learning, and each day's reach and growth,
  // are drawn with this fixed seed, so that two runs give the same plan.
  unsigned seed = 0;
  // When not empty, what each practice day holds; the above then says only what else is welcome.
  std::vector<DayChoice> chosen{};
};

// The variants worth trying, the plainest first: all of them, or only those that have been seen to
// help larger pieces, since each takes its time.
std::vector<TightVariant> tight_variants(bool every_one);

}  // namespace cahier
