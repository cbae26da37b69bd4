// What a day with hardly anything is filled with.
#pragma once

#include "plan/schedule/draft.h"

namespace cahier {

class ThinDays {
 public:
  // Where the day's work is not worth sitting down for, what is learned of a section is played
  // through slowly besides; the stretches take turns. Never more than the day has room for.
  void fill(Draft& draft, int day);

 private:
  void fill(Draft& draft, PieceProgress& progress, int day);

  int turn_ = 0;  // the stretch that is next
};

}  // namespace cahier
