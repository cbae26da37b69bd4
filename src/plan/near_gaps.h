// How many of the gaps between recalls are near the best ones, however often more is played
// between.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

struct GapCount {
  int near = 0;      // within half to twice the best gap for the days left, both included
  int off = 0;       // neither near nor forced
  int forced = 0;    // too long, but they end on the very next practice day: days off alone
  int too_long = 0;  // longer than rule 5 allows
};

class NearGaps {
 public:
  // REQUIRES: `plan` outlives this object.
  explicit NearGaps(const Plan& plan);

  // Of one chunk, by its days of recall, in order. That sub-sequence of them counts that has the
  // fewest gaps off the best ones: from the first to one after which the date lies within rule 5,
  // without a gap past rule 5 but where two recalls leave one. Gaps that are past do not count.
  GapCount count(const std::vector<Date>& recalls) const;

 private:
  GapCount after(GapCount count, Date first, Date second) const;
  bool is_past_limit(Date first, Date second) const;
  bool is_next_practice_day(Date first, Date second) const;

  const Plan& plan_;
  std::vector<Date> practice_;
};

}  // namespace cahier
