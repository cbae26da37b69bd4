// Which days are kept free to catch up.
#include "plan/schedule/learning_quota.h"

#include "catch.h"
#include "drafted.h"

namespace cahier {
namespace {

using Days = std::vector<int>;

// Five weeks from a Monday on; of each the first `in_week` days are practice days. Learning ends on
// day 3.
Days days_to_catch_up(int in_week) {
  sample::Drafted work("bars: 8\n", sample::fours(2), 35, 30);
  Days practice;
  for (int day = 0; day < 35; ++day)
    if (day % 7 < in_week) practice.push_back(day);
  Pace pace;
  pace.learn_until = 3;
  const LearningQuota quota(work.divided.work, pace, practice, work.draft.room);
  Days found;
  for (int day = 0; day < 35; ++day)
    if (quota.rests_on(day)) found.push_back(day);
  return found;
}

}  // namespace

TEST_CASE("the last practice day of a week is kept free, but not in the last ten days",
          "[numbers]") {
  CHECK(days_to_catch_up(7) == Days{6, 13, 20});
  CHECK(days_to_catch_up(5) == Days{4, 11, 18});
  CHECK(days_to_catch_up(4) == Days{10, 17, 24});
}

TEST_CASE("a week of three practice days has none to catch up", "[numbers]") {
  CHECK(days_to_catch_up(3).empty());
}

}  // namespace cahier
