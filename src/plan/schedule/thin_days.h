// What a day with hardly anything is filled with.
#pragma once

#include <map>
#include <utility>

#include "plan/schedule/draft.h"

namespace cahier {

class ThinDays {
 public:
  // Where the day's work is not worth sitting down for, what is learned of a section is played
  // through slowly besides; the stretches take turns, none on days close together. Never more than
  // the day has room for.
  void fill(Draft& draft, int day);

 private:
  void fill(Draft& draft, PieceProgress& progress, int day);

  int turn_ = 0;                                                // the stretch that is next
  std::map<std::pair<const PieceProgress*, int>, int> filled_;  // by stretch: the last day of it
};

}  // namespace cahier
