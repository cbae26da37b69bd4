#include "deadlines.h"

#include <algorithm>
#include <cmath>

#include "practice/best_gap.h"

namespace cahier::brute {

Deadlines::Deadlines(const Terms& terms) {
  const std::vector<Day> empty = calendar(terms);
  const int date = static_cast<int>(empty.size());
  std::vector<int> practice;
  for (int day = 0; day < date; ++day)
    if (empty[day].allowance > 0) practice.push_back(day);
  const int count = static_cast<int>(practice.size());
  for (int at = 0; at < count; ++at) {
    const int day = practice[at];
    room.push_back(static_cast<int>(std::floor(empty[day].allowance * 2 + 1e-9)));
    may_learn.push_back(date - day > terms.method.quiet_days ? 1 : 0);
    const int next = at + 1 < count ? practice[at + 1] : date;
    const int latest = std::max(next, day + longest_gap_days(terms.method, date - day));
    // The last practice day within the limit; none is needed when the date lies within it.
    int within = count;
    if (latest < date) {
      within = at + 1;
      while (within + 1 < count && practice[within + 1] <= latest) ++within;
    }
    after_retrieval.push_back(within);
    // The first recall: also within so many practice days, or on the last one there is.
    const int soon = std::min(at + terms.method.first_recall_days, count - 1);
    after_learning.push_back(at + 1 < count ? std::min(within, soon) : within);
  }
  for (const int halves : room) longest = std::max(longest, halves);
}

}  // namespace cahier::brute
