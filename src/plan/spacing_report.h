// How near a plan's recalls come to the best gaps.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

struct ChunkSpacing {
  int piece = 0;  // index into the plan's pieces
  int chunk = 0;  // index into the piece's chunks
  // Days after the one of learning on which it is played from memory, each once, in order. What
  // is played on the day of learning tests no memory: that takes a night (Simmons 2012).
  std::vector<Date> recalls;
  // From the same first recall on, each at the best gap for the days left, before the date. A day
  // off gives way to the nearest practice day, the later of two equally near.
  std::vector<Date> ideal;
  // Of the gaps that count (plan/near_gaps.h): those within half to twice the best gap, and all.
  int near = 0;
  int gaps = 0;
};

struct SpacingReport {
  std::vector<ChunkSpacing> chunks;  // those that are learned, by piece and bar
  int near = 0;                      // of all chunks
  int gaps = 0;
  // Gaps longer than twice the best one that only days off make so long; they are among all gaps.
  int forced_by_days_off = 0;

  // Share of all gaps within half to twice the best gap, 0 … 1; 1 when there is no gap.
  double near_share() const { return gaps > 0 ? static_cast<double>(near) / gaps : 1; }
};

SpacingReport spacing_report(const Plan& plan);

}  // namespace cahier
