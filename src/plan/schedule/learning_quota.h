// How much new material each day should have taken in by its end.
#pragma once

#include <vector>

#include "plan/schedule/work.h"

namespace cahier {

class LearningQuota {
 public:
  // `room` is each day's minutes after run-throughs are set aside.
  LearningQuota(const Work& work, const Pace& pace, const std::vector<int>& practice_days,
                const std::vector<double>& room);

  // A day kept free, so that a missed day can be made up: the last practice day of a week with at
  // least four. While there is something to learn it holds nothing new, later nothing that can
  // wait.
  bool rests_on(int day) const { return rests_[day]; }

  // Whether the next chunk of the order should still be learned on this day, which has `today`
  // already.
  bool may_learn(int day, double learned_minutes, int next, int today) const;

 private:
  int learn_until_;
  bool eager_;
  std::vector<bool> rests_;
  std::vector<double> target_;
  std::vector<int> days_after_;  // by day: days of learning after it
  int chunks_ = 0;               // by day: learning minutes to have behind one
};

}  // namespace cahier
