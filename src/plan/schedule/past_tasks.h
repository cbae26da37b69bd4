// What was done, as tasks of the chunks and cue starts of today's plan.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/plan.h"
#include "plan/terms.h"

namespace cahier {

// The days with something done before `from`, by date: of each day first what was new. Bars learned
// at one time are a task for each of their chunks. `analyses` by piece, analysed with the
// record's histories. Ids are empty, and so are allowances.
std::vector<Day> past_days(const Record& record, const std::vector<Analysis>& analyses,
                           const Method& method, Date from);

// The calendar of the plan, after the days of the past, which have no minutes.
std::vector<Day> calendar_with_past(const Terms& terms);

}  // namespace cahier
