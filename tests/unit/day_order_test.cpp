// Where a day has its breaks.
#include "plan/schedule/day_order.h"

#include "catch.h"
#include "sound_plan.h"

namespace cahier {
namespace {

// The sittings of a day of two blocks and twenty minutes, with two tasks.
int sittings(double first, double second) {
  Day day;
  day.allowance = 20;
  day.tasks = {sound::task(Drill::recall, {1, 4}, {0}, first),
               sound::task(Drill::recall, {5, 8}, {1}, second)};
  divide_into_sittings(day, 2, 60);
  return day.tasks.back().block + 1;
}

}  // namespace

TEST_CASE("a day that hardly passes one block's share needs no break", "[numbers]") {
  CHECK(sittings(6, 7) == 1);  // of ten minutes and three tenths
  CHECK(sittings(7, 7) == 2);
}

}  // namespace cahier
