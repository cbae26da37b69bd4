// How near a plan's recalls come to the best gaps.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

struct ChunkSpacing {
  int piece = 0;
  int chunk = 0;
  std::vector<Date> recalls;  // days on which it is played from memory, the first after learning on
  std::vector<Date> ideal;    // from the same first recall on, each at the best gap, up to the date
  int near = 0;               // gaps between recalls within half to twice the best gap
  int gaps = 0;
};

struct SpacingReport {
  std::vector<ChunkSpacing> chunks;  // those that are learned
  // Share of all gaps within half to twice the best gap, 0 … 1; 1 when there is no gap.
  double near_share = 1;
  // Gaps that are too long only because no practice day lies within twice the best gap.
  int forced_by_days_off = 0;
};

SpacingReport spacing_report(const Plan& plan);

}  // namespace cahier
