// What a plan adds up to.
#pragma once

#include <optional>

#include "plan/plan.h"

namespace cahier {

// Minutes; all pieces together.
struct Totals {
  int practice_days = 0;
  int days_with_work = 0;
  int catch_up_days = 0;
  double spare_minutes = 0;
  double least_day = 0;
  double most_day = 0;
  int chunks = 0;
  int cues = 0;
  int learned_before = 0;  // of the chunks
  int learned_chunks = 0;  // learn tasks
  double learn_minutes = 0;
  std::optional<Date> learned;  // the day of the last learning, before this edition or in it
  int runs = 0;                 // run-throughs planned
};

Totals totals_of(const Plan& plan);

// Whether any day has a task of this kind for the piece.
bool asks_for(const Plan& plan, int piece, Drill drill);
// The same for any piece.
bool asks_for(const Plan& plan, Drill drill);

}  // namespace cahier
