#include "plan/due/growing_runs.h"

#include <algorithm>
#include <cstdlib>

#include "practice/numbers.h"

namespace cahier {
namespace {

class GrowingRuns {
 public:
  GrowingRuns(const Method& method, const std::vector<Day>& calendar,
              const std::vector<double>& room, double minutes)
      : method_(method),
        calendar_(calendar),
        room_(room),
        minutes_(minutes),
        end_(static_cast<int>(room.size())) {}

  bool place(int learned, int asked) {
    int run =
        nearest(learned + method_.first_run_days, learned + 2, learned + method_.first_run_days);
    while (run >= 0 && end_ - run > numbers::kLastWeek) {
      chosen_.push_back(run);
      const int most = method_.days_between_runs(end_ - run);
      const int wanted = run + most - 1;
      if (end_ - wanted <= numbers::kLastWeek) break;
      const int next = nearest(wanted, run + 1, run + most);
      run = next >= 0 ? next : nearest(wanted, run + most + 1, end_ - numbers::kLastWeek - 1);
    }
    for (const int left : method_.last_run_days) {
      const int day = nearest(end_ - left, end_ - numbers::kLastWeek, end_ - 1);
      if (day >= 0) chosen_.push_back(day);
    }
    std::sort(chosen_.begin(), chosen_.end());
    while (static_cast<int>(chosen_.size()) < asked)
      if (!place_between()) return false;
    return true;
  }

  std::vector<int> runs() const {
    std::vector<int> runs(calendar_.size(), 0);
    for (const int day : chosen_) runs[day] = 1;
    return runs;
  }

 private:
  bool is_free(int day) const {
    return calendar_[day].allowance > 0 && room_[day] >= minutes_ &&
           std::find(chosen_.begin(), chosen_.end(), day) == chosen_.end();
  }

  // The free day nearest to `wanted` from `first` to `last`, or -1.
  int nearest(int wanted, int first, int last) const {
    int best = -1;
    for (int day = std::max(0, first); day <= std::min(last, end_ - 1); ++day)
      if (is_free(day) && (best < 0 || std::abs(day - wanted) < std::abs(best - wanted)))
        best = day;
    return best;
  }

  // One more where two before the last week are farthest apart.
  bool place_between() {
    int best = -1;
    int farthest = 0;
    for (std::size_t i = 1; i < chosen_.size(); ++i) {
      const int before = chosen_[i - 1];
      const int apart = chosen_[i] - before;
      if (apart <= farthest) continue;
      const int day = nearest(before + apart / 2, before + 1,
                              std::min(chosen_[i], end_ - numbers::kLastWeek) - 1);
      if (day < 0) continue;
      best = day;
      farthest = apart;
    }
    if (best < 0) return false;
    chosen_.insert(std::lower_bound(chosen_.begin(), chosen_.end(), best), best);
    return true;
  }

  const Method& method_;
  const std::vector<Day>& calendar_;
  const std::vector<double>& room_;
  double minutes_;
  int end_;
  std::vector<int> chosen_;  // in order, once all are placed
};

}  // namespace

std::optional<RunDays> choose_growing_runs(const Method& method, const std::vector<Day>& calendar,
                                           const std::vector<double>& room, int learned,
                                           const RunsAsked& asked, double minutes) {
  if (static_cast<int>(calendar.size()) - learned < numbers::kGrowingRunsNeed) return std::nullopt;
  GrowingRuns growing(method, calendar, room, minutes);
  if (!growing.place(learned, std::max(asked.runs, asked.on_days))) return std::nullopt;
  RunDays result;
  result.runs = growing.runs();
  return result;
}

}  // namespace cahier
