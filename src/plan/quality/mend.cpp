#include "plan/quality/mend.h"

#include <algorithm>
#include <utility>

namespace cahier {

Shortfall with_mend(Shortfall shortfall, const Plan& plan, DateSpan window, double minutes) {
  window.first = std::max(window.first, plan.from);
  window.last = std::min(window.last, plan.by - days{1});
  shortfall.window = window;
  if (window.first > window.last) {
    shortfall.mend = Mend::later_date;
    return shortfall;
  }
  bool any_off = false;
  for (const Day& day : plan.days) {
    if (!window.contains(day.date)) continue;
    any_off = any_off || day.allowance <= 0;
    // What is longer than any day may stand alone on its own.
    if (day.allowance > 0 && (day.tasks.empty() || day.minutes() + minutes <= day.allowance))
      return shortfall;
  }
  shortfall.mend = any_off ? Mend::fewer_days_off : Mend::more_minutes;
  return shortfall;
}

}  // namespace cahier
