// When learning should be over.
#include "plan/search/learning_days.h"

#include <functional>

#include "catch.h"
#include "drafted.h"

namespace cahier {
namespace {

// So many chunks that take so many minutes each, on days of so many; every day is a practice day.
int comfortable(int length, int chunks, double each, double minutes,
                const std::function<void(Method&)>& change = {}) {
  sample::Drafted work("bars: " + std::to_string(4 * chunks) + "\n", sample::fours(chunks), length,
                       minutes);
  if (change) change(work.terms.method);
  for (double& learn : work.divided.analyses[0].learn_minutes) learn = each;
  const LearningDays days(work.terms, work.divided, work.days, work.draft.practice_days);
  return days.last().front();
}

// Learning is not spread over more days than it needs.
void hurried(Method& method) {
  method.most_learn_share = 0;
  method.prove_days = 0;
}

}  // namespace

TEST_CASE("a day learns a chunk for every quarter of an hour", "[numbers]") {
  CHECK(comfortable(100, 24, 1, 60, hurried) == 6);
}

TEST_CASE("new bars take six tenths of the minutes at most", "[numbers]") {
  // 240 minutes, 12 of 20 a day.
  CHECK(comfortable(100, 12, 20, 20, hurried) == 20);
}

TEST_CASE("of seven days one is spared, where there is one chunk a day", "[numbers]") {
  CHECK(comfortable(100, 24, 1, 60, [](Method& method) {
          method.learn_share = 0;
          method.prove_days = 0;
        }) == 28);
}

TEST_CASE("where there is slack learning takes 42 hundredths of the days, six a chunk at most",
          "[numbers]") {
  CHECK(comfortable(300, 30, 5, 60) == 126);
  CHECK(comfortable(300, 10, 5, 60) == 60);
}

TEST_CASE("learning is spread over half of the days at most", "[numbers]") {
  CHECK(comfortable(40, 20, 5, 60, [](Method& method) { method.prove_days = 0; }) == 20);
}

TEST_CASE("where the days leave no eight weeks, learning takes a third of them", "[numbers]") {
  CHECK(comfortable(50, 10, 5, 60) == 17);
}

TEST_CASE("learning leaves eight weeks, where half of each day is enough for that", "[numbers]") {
  CHECK(comfortable(90, 30, 5, 60) == 34);
  // Ten days come before the eight weeks, of half an hour for new bars each.
  CHECK(comfortable(66, 10, 30, 60) == 10);
  CHECK(comfortable(66, 10, 30.6, 60) == 22);
}

TEST_CASE("learning leaves the method's share of the days to prove", "[numbers]") {
  CHECK(comfortable(60, 45, 5, 15) == 39);  // 65 of a hundred
}

}  // namespace cahier
