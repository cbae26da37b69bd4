#include "plan/schedule/learning_quota.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

// The last practice day of every week with at least so many; but the last days of learning, and the
// last before the date, are needed as they are.
std::vector<bool> catch_up_days(const std::vector<Day>& days, const std::vector<int>& practice_days,
                                int until) {
  std::vector<bool> rests(days.size(), false);
  int in_week = 0;
  for (std::size_t i = 0; i < practice_days.size(); ++i) {
    const int day = practice_days[i];
    ++in_week;
    const bool week_ends =
        i + 1 == practice_days.size() || days[practice_days[i + 1]].date - days[day].date >
                                             std::chrono::days{6 - weekday_index(days[day].date)};
    if (!week_ends) continue;
    const int left = static_cast<int>(days.size()) - day;
    if (in_week >= numbers::kCatchUpWeek && (day < until || left > numbers::kNoCatchUpDays) &&
        day != until)
      rests[day] = true;
    in_week = 0;
  }
  return rests;
}

}  // namespace

LearningQuota::LearningQuota(const Work& work, const Pace& pace,
                             const std::vector<int>& practice_days, const std::vector<double>& room)
    : learn_until_(pace.learn_until), eager_(pace.eager) {
  rests_ = pace.catch_up ? catch_up_days(work.days, practice_days, pace.learn_until)
                         : std::vector<bool>(work.days.size(), false);
  chunks_ = pace.chunks;
  // Where each day is needed for one chunk a day, as many of the first weeks have none to catch up:
  // little is behind as yet.
  const auto learning_days =
      std::count_if(practice_days.begin(), practice_days.end(),
                    [&](int day) { return day <= learn_until_ && !rests_[day]; });
  for (int day = 0, missing = chunks_ - static_cast<int>(learning_days);
       missing > 0 && day <= learn_until_ && day < static_cast<int>(rests_.size()); ++day)
    if (rests_[day]) {
      rests_[day] = false;
      --missing;
    }
  days_after_.assign(work.days.size(), 0);
  for (const int learning : practice_days)
    if (learning <= learn_until_ && !rests_[learning])
      for (int day = 0; day < learning; ++day) ++days_after_[day];
  // The first chunk is learned on the first day, the last one on the last.
  double total = 0;
  for (int i = 0; i + 1 < pace.chunks; ++i)
    total += work.analyses[work.order[i].piece].learn_minutes[work.order[i].chunk];
  double all_room = 0;
  for (const int day : practice_days)
    if (day <= learn_until_ && !rests_[day]) all_room += room[day];
  target_.assign(work.days.size(), 0);
  double room_so_far = 0;
  std::size_t position = 0;
  for (int day = 0; day < static_cast<int>(work.days.size()); ++day) {
    if (position < practice_days.size() && practice_days[position] == day) {
      if (day <= learn_until_ && !rests_[day]) room_so_far += room[day];
      ++position;
    }
    target_[day] = all_room > 0 ? total * room_so_far / all_room : 0;
  }
}

bool LearningQuota::may_learn(int day, double learned_minutes, int next, int today) const {
  if (day > learn_until_ || rests_[day]) return false;
  if (eager_) return true;
  // A second chunk on a day only where there are more to come than days.
  const bool needed = chunks_ - next > days_after_[day];
  if (today > 0 && !needed) return false;
  // Else two would meet on a later day.
  if (today == 0 && needed) return true;
  return learned_minutes <= target_[day] + 1e-9;
}

}  // namespace cahier
