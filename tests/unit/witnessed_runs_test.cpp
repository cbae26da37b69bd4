#include "plan/due/witnessed_runs.h"

#include "catch.h"
#include "sample_plan.h"

namespace cahier {

using Reasons = std::vector<Reason>;

// With the listeners of the built-in method.
static Reasons heard(const std::vector<int>& days_left) {
  return witnessed_runs(days_left, sample::steady().listener_days);
}

TEST_CASE("three run-throughs are for a listener, nearest to 14, 9 and 5 days before the date",
          "[numbers]") {
  CHECK(heard({48, 39, 30, 21, 14, 9, 5, 2}) ==
        Reasons{Reason::whole, Reason::whole, Reason::whole, Reason::recorded, Reason::listener,
                Reason::listener, Reason::listener, Reason::whole});
  // The nearest to fourteen is the twelfth, and the nearest to nine then the fifth.
  CHECK(heard({48, 39, 30, 21, 12, 5, 2}) == Reasons{Reason::whole, Reason::whole, Reason::recorded,
                                                     Reason::recorded, Reason::listener,
                                                     Reason::listener, Reason::listener});
}

TEST_CASE("nobody listens on the eve, nor to the first half of the run-throughs", "[numbers]") {
  CHECK(heard({14, 9, 2, 1}) ==
        Reasons{Reason::whole, Reason::recorded, Reason::listener, Reason::whole});
  CHECK(heard({1}) == Reasons{Reason::recorded});
  CHECK(heard({}).empty());
}

}  // namespace cahier
