// When to recall next.
#pragma once

#include <vector>

#include "practice/method.h"

namespace cahier {

// The best gap in days before the next recall when the date is `horizon` days away. Interpolated
// log-log through the method's published pairs (T = gap + delay), extended in a straight line
// beyond them, at least one day. Source: the method file.
double best_gap(const Method& method, double horizon);

// The best gap in whole days; ties go to the longer.
int best_gap_days(const Method& method, int horizon);

// The longest gap a plan may leave, in whole days: longest_gap times the best, rounded.
int longest_gap_days(const Method& method, int horizon);

}  // namespace cahier
