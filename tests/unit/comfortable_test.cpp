// How long a join waits.
#include "plan/schedule/comfortable.h"

#include "catch.h"
#include "drafted.h"

namespace cahier {
namespace {

// The days on which the schedule has a drill.
std::vector<int> days_of(const Schedule& schedule, Drill drill) {
  std::vector<int> found;
  for (std::size_t day = 0; day < schedule.days.size(); ++day)
    for (const Task& task : schedule.days[day].tasks)
      if (task.drill == drill) found.push_back(static_cast<int>(day));
  return found;
}

}  // namespace

TEST_CASE("a join waits four days for a turn on other bars before it, no longer", "[numbers]") {
  // Both chunks are recalled every day, each by itself, and nothing else is there to play.
  sample::Drafted work("bars: 8\nsections: [{name: A, bars: 1-4}, {name: B, bars: 5-8}]\n",
                       sample::fours(2), 40, 60, 1);
  Pace pace;
  pace.learn_until = 1;
  pace.catch_up = false;
  pace.runs = false;
  pace.chunks = 2;
  const Schedule schedule = lay_out(work.divided.work, pace);
  REQUIRE(days_of(schedule, Drill::learn) == std::vector<int>{0, 1});
  CHECK(days_of(schedule, Drill::join) == std::vector<int>{1 + 4});
}

}  // namespace cahier
