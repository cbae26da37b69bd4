#include "plan/due/witnessed_runs.h"

#include <algorithm>
#include <cstdlib>

#include "practice/numbers.h"

namespace cahier {
std::vector<Reason> witnessed_runs(const std::vector<int>& days_left,
                                   const std::vector<int>& listener_days) {
  std::vector<Reason> reasons(days_left.size(), Reason::whole);
  // The first half needs no witness.
  const std::size_t middle = days_left.size() / 2;
  for (const int wanted : listener_days) {
    std::size_t best = days_left.size();
    for (std::size_t run = middle; run < days_left.size(); ++run) {
      if (days_left[run] <= numbers::kEve || reasons[run] == Reason::listener) continue;
      if (best == days_left.size() ||
          std::abs(days_left[run] - wanted) < std::abs(days_left[best] - wanted))
        best = run;
    }
    if (best < days_left.size()) reasons[best] = Reason::listener;
  }
  const auto first = std::find(reasons.begin(), reasons.end(), Reason::listener);
  const auto from =
      reasons.begin() + static_cast<std::ptrdiff_t>(std::max<std::size_t>(middle, 1) - 1);
  for (auto run = std::min(from, first); run < reasons.end(); ++run)
    if (*run == Reason::whole && (run < first || first == reasons.end())) *run = Reason::recorded;
  return reasons;
}

}  // namespace cahier
