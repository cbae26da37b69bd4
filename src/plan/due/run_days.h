// On which days the run-throughs stand.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "practice/method.h"

namespace cahier {

struct RunDays {
  std::vector<int> runs;  // by day index: how many run-throughs, 0, 1 or 2
  bool alone = false;     // a run-through is longer than any day's allowance
  int missing = 0;        // run-throughs that found no place
};

// How many run-throughs are required, on how many days at least, and how many more are welcome.
struct RunsAsked {
  int runs = 0;
  int on_days = 0;
  int more = 0;
};

// Chooses days for run-throughs of `minutes` each among the days from `first` on: the gaps before
// the date follow the best gaps where the calendar lets them, at most `method.runs_a_day` a day.
// `room` is what each day still holds. A run-through longer than any day's allowance stands alone
// on its day. `light_end` keeps the last practice day free of one that takes more than half of it,
// where there are other days.
RunDays choose_run_days(const Method& method, const std::vector<Day>& calendar,
                        const std::vector<double>& room, int first, const RunsAsked& asked,
                        double minutes, bool light_end);

// Ways of packing run-throughs into few days: as many a day as the method allows, at the end, the
// odd one on the first or on the last of them; the same as soon as everything is learned; evenly
// on all days from then on; or as growing runs, where there are days for them.
enum class RunPlacing { late, late_odd_last, early, even, growing };

// Whether the packing starts from the day everything is learned.
inline bool is_once_learned(RunPlacing variant) {
  return variant == RunPlacing::early || variant == RunPlacing::even ||
         variant == RunPlacing::growing;
}

// Days for the run-throughs in the fewest days or as the packing says, among those from `first` on.
RunDays place_runs_tightly(const Method& method, const std::vector<Day>& calendar,
                           const std::vector<double>& room, int first, const RunsAsked& asked,
                           double minutes, RunPlacing variant);

}  // namespace cahier
