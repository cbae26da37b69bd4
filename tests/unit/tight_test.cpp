// What a tight calendar does with the room that is left.
#include "plan/schedule/tight.h"

#include "catch.h"
#include "drafted.h"

namespace cahier {

TEST_CASE("on a tight calendar the room left goes to what is due by a whole best gap",
          "[numbers]") {
  sample::Drafted work("bars: 4\n", sample::fours(1), 60, 60);
  const Schedule schedule = lay_tight(work.divided.work, TightVariant{});
  std::vector<int> recalled;
  for (std::size_t day = 0; day < schedule.days.size(); ++day)
    for (const Task& task : schedule.days[day].tasks)
      if (task.drill == Drill::recall) recalled.push_back(static_cast<int>(day));
  REQUIRE(recalled.size() >= 2);
  CHECK(recalled[1] - recalled[0] == 10);
}

}  // namespace cahier
