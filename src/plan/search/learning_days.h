// Until when anything new is learned.
#pragma once

#include <vector>

#include "plan/schedule/divided_work.h"
#include "plan/terms.h"

namespace cahier {

class LearningDays {
 public:
  // `calendar` from the first day of the past on, `practice_days` in order. REQUIRES: everything
  // passed in outlives this object.
  LearningDays(const Terms& terms, const DividedWork& divided, const std::vector<Day>& calendar,
               const std::vector<int>& practice_days)
      : terms_(terms), divided_(divided), days_(calendar), practice_days_(practice_days) {}

  // Candidates for the last day of learning, the most comfortable first: leaving the method's share
  // of the days to prove, then later, then earlier, by so many practice days or about a twelfth of
  // them. Where nothing is left to learn, the day before the plan; empty where no day may be one.
  std::vector<int> last(int least_step = 0) const;

  // The position among the practice days of the last that the method lets be one; -1 for none.
  int latest_position() const;

 private:
  int comfortable_position() const;
  int days_before_date(int least) const;
  double practice_days_before() const;

  const Terms& terms_;
  const DividedWork& divided_;
  const std::vector<Day>& days_;
  const std::vector<int>& practice_days_;
};

}  // namespace cahier
