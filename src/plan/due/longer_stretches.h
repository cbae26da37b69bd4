// What grows towards the run-throughs: sections, then halves of the piece, without stopping.
#pragma once

#include <vector>

#include "plan/due/task_maker.h"
#include "plan/plan.h"

namespace cahier {

// Bars to be played on a day from memory, set aside before the rest of the day is filled.
struct ReservedRecall {
  int day = 0;
  BarRange bars;
  double minutes = 0;
  Reason reason = Reason::half;
};

// The two halves of a piece, cut where the section or phrase begins that is nearest to the middle;
// none of a short piece.
std::vector<BarRange> halves(const PlannedPiece& planned);

// Days between learning and the first run-through for the two halves of the piece, and before them
// for the sections that are otherwise recalled in several stretches: each about a best gap before
// what comes after it, or half the way. `room` is what each day still holds; it is reduced. A short
// piece has no halves; where the calendar leaves no room, nothing is booked.
std::vector<ReservedRecall> reserve_longer_stretches(const Analysis& analysis,
                                                     const TaskMaker& make, const Method& method,
                                                     std::vector<double>& room, int learn_until,
                                                     int first_run);

}  // namespace cahier
