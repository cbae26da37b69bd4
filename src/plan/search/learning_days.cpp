#include "plan/search/learning_days.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
std::vector<int> LearningDays::last(int least_step) const {
  // Where nothing is left to learn, every day is one to prove.
  if (practice_days_.empty()) return {};
  if (divided_.work.order.empty()) return {divided_.work.first - 1};
  std::vector<int> positions;
  const int latest = latest_position();
  if (latest < 0) return positions;
  const int comfortable = std::clamp(comfortable_position(), 0, latest);
  const int step =
      least_step > 0 ? least_step : std::max(1, static_cast<int>(practice_days_.size()) / 12);
  positions.push_back(comfortable);
  for (int later = comfortable + step; later < latest; later += step) positions.push_back(later);
  if (latest != comfortable) positions.push_back(latest);
  for (int earlier = comfortable - step; earlier >= 0; earlier -= step)
    positions.push_back(earlier);
  std::vector<int> result;
  for (const int position : positions) result.push_back(practice_days_[position]);
  return result;
}

int LearningDays::latest_position() const {
  const int end = static_cast<int>(days_.size());
  int latest = -1;
  for (int i = 0; i < static_cast<int>(practice_days_.size()); ++i)
    if (end - practice_days_[i] > terms_.method.quiet_days) latest = i;
  return latest;
}

int LearningDays::comfortable_position() const {
  const double practice = static_cast<double>(practice_days_.size());
  double learning = 0;
  for (const Work::Item& item : divided_.work.order)
    learning += divided_.analyses[item.piece].learn_minutes[item.chunk];
  double allowance = 0;
  for (const int day : practice_days_) allowance += days_[day].allowance;
  if (practice > 0) allowance /= practice;
  const double chunks_a_day = std::max(1.0, allowance / numbers::kMinutesAChunk);
  const double needed = std::max(learning / std::max(1.0, numbers::kNewShare * allowance),
                                 static_cast<double>(divided_.work.order.size()) / chunks_a_day);
  const double count = static_cast<double>(divided_.work.order.size());
  // Where there is slack learning is spread, one chunk a day. It leaves the weeks to prove where
  // half of each day is enough for that, and else gives up as few of them as it can. A later
  // edition keeps to the end that the first one had.
  const double before = practice_days_before();
  const auto share = [&](double of_all) { return of_all * (before + practice) - before; };
  const double weeks = days_before_date(terms_.method.prove_days + 1);
  const double fast = allowance > 0 ? learning / (numbers::kFullPaceShare * allowance) : practice;
  const double slow = std::max(2 * fast - weeks,
                               share(terms_.method.least_learn_share + numbers::kLearnShareSpare));
  const double latest =
      std::max(0.0, std::min(share(terms_.method.most_learn_share), fast <= weeks ? weeks : slow));
  const double spread =
      std::min(share(terms_.method.learn_share), numbers::kMostDaysAChunk * count);
  const double unhurried = std::min(latest, std::max(spread, count * numbers::kSparedDays));
  const double spared = std::max(needed, std::min(latest, needed * numbers::kSparedDays));
  double position = std::max(spared, unhurried);
  if (fast <= weeks) position = std::min(position, weeks);
  return static_cast<int>(std::min(position, practice * (1 - terms_.method.prove_share)));
}

// About how many practice days the past had, if they came as often as they will.
double LearningDays::practice_days_before() const {
  const int first = divided_.work.first;
  const double to_come = static_cast<double>(days_.size()) - first;
  return to_come > 0 ? first * static_cast<double>(practice_days_.size()) / to_come : 0;
}

// Practice days that lie at least so many days before the date.
int LearningDays::days_before_date(int least) const {
  const int end = static_cast<int>(days_.size());
  return static_cast<int>(std::count_if(practice_days_.begin(), practice_days_.end(),
                                        [&](int day) { return end - day >= least; }));
}

}  // namespace cahier
