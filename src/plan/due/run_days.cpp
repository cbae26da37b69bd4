#include "plan/due/run_days.h"

#include <algorithm>
#include <cmath>

#include "practice/best_gap.h"

namespace cahier {
namespace {

// Days before the date at which recalls at the best gaps would fall: 1, 2, 4, 6, 9, 13 …
std::vector<int> ideal_days_before(const Method& method, int horizon) {
  std::vector<int> ideal;
  for (int left = 1; left <= horizon;) {
    ideal.push_back(left);
    int earlier = left + 1;
    while (earlier + 1 - best_gap_days(method, earlier + 1) <= left) ++earlier;
    left = earlier;
  }
  return ideal;
}

// The eligible day nearest to `wanted` that holds no run yet; the later of two as near; -1 for
// none.
int nearest_free(const std::vector<int>& eligible, const std::vector<int>& runs, int wanted) {
  int best = -1;
  for (const int day : eligible)
    if (runs[day] == 0 && (best < 0 || std::abs(day - wanted) <= std::abs(best - wanted)))
      best = day;
  return best;
}

}  // namespace

RunDays choose_run_days(const Method& method, const std::vector<Day>& calendar,
                        const std::vector<double>& room, int first, const RunsAsked& asked,
                        double minutes, bool light_end) {
  const int required = asked.runs + asked.more;
  const int end = static_cast<int>(calendar.size());
  RunDays result;
  result.runs.assign(end, 0);
  double most = 0;
  for (const Day& day : calendar) most = std::max(most, day.allowance);
  result.alone = minutes > most;

  std::vector<int> eligible;
  for (int day = std::max(0, first); day < end; ++day)
    if (calendar[day].allowance > 0 &&
        (result.alone ? room[day] == calendar[day].allowance : room[day] >= minutes))
      eligible.push_back(day);

  if (light_end && static_cast<int>(eligible.size()) > required &&
      minutes > calendar[eligible.back()].allowance / 2 &&
      end - eligible[eligible.size() - 2] <= longest_gap_days(method, 2))
    eligible.pop_back();

  int placed = 0;
  for (const int left : ideal_days_before(method, end - std::max(0, first))) {
    if (placed == required) break;
    const int day = nearest_free(eligible, result.runs, end - left);
    if (day < 0) break;
    result.runs[day] = 1;
    ++placed;
  }
  // Too few ideal days: the other eligible days, last first.
  for (auto day = eligible.rbegin(); day != eligible.rend() && placed < required; ++day)
    if (result.runs[*day] == 0) {
      result.runs[*day] = 1;
      ++placed;
    }
  // Still too few: a second run-through a day, but not on the last day unless it must be.
  if (!result.alone && method.runs_a_day > 1)
    for (const bool last_too : {false, true})
      for (auto day = eligible.rbegin(); day != eligible.rend() && placed < required; ++day)
        if (result.runs[*day] == 1 && room[*day] >= 2 * minutes && (last_too || *day != end - 1)) {
          result.runs[*day] = 2;
          ++placed;
        }
  const int on_days = static_cast<int>(
      std::count_if(result.runs.begin(), result.runs.end(), [](int runs) { return runs > 0; }));
  result.missing = std::max(0, asked.runs - placed);
  if (result.missing == 0 && on_days < asked.on_days) result.missing = 1;
  return result;
}

RunDays place_runs_tightly(const Method& method, const std::vector<Day>& calendar,
                           const std::vector<double>& room, int first, const RunsAsked& asked,
                           double minutes, RunPlacing variant) {
  RunDays result;
  result.runs.assign(calendar.size(), 0);
  result.alone = std::all_of(calendar.begin(), calendar.end(),
                             [&](const Day& day) { return minutes > day.allowance; });
  result.missing = asked.runs;
  std::vector<int> candidates;
  for (int day = std::max(0, first); day < static_cast<int>(calendar.size()); ++day)
    if (calendar[day].allowance > 0) candidates.push_back(day);
  if (!is_once_learned(variant)) std::reverse(candidates.begin(), candidates.end());

  int days_to_come = asked.on_days;
  int days_left = static_cast<int>(candidates.size());
  for (const int day : candidates) {
    const int left = days_left--;
    if (result.missing == 0) break;
    int count = static_cast<int>(room[day] / minutes + 1e-9);
    if (result.alone) count = room[day] == calendar[day].allowance ? 1 : 0;
    const bool single =
        variant == RunPlacing::late_odd_last && result.missing % method.runs_a_day != 0;
    count = std::min({count, single || result.alone ? 1 : method.runs_a_day,
                      std::max(1, result.missing - (days_to_come - 1))});
    if (variant == RunPlacing::even) count = std::min(count, (result.missing + left - 1) / left);
    if (count <= 0) continue;
    result.runs[day] = count;
    result.missing -= count;
    --days_to_come;
  }
  if (result.missing == 0 && days_to_come > 0) result.missing = 1;
  return result;
}

}  // namespace cahier
