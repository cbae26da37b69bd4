#include "plan/due/witnessed_runs.h"

#include "catch.h"

namespace cahier {

using Reasons = std::vector<Reason>;

TEST_CASE("three run-throughs are for a listener, nearest to 14, 9 and 5 days before the date") {
  CHECK(witnessed_runs({48, 39, 30, 21, 14, 9, 5, 2}) ==
        Reasons{Reason::whole, Reason::whole, Reason::whole, Reason::recorded, Reason::listener,
                Reason::listener, Reason::listener, Reason::whole});
  // The nearest to fourteen is the twelfth, and the nearest to nine then the fifth.
  CHECK(witnessed_runs({48, 39, 30, 21, 12, 5, 2}) ==
        Reasons{Reason::whole, Reason::whole, Reason::recorded, Reason::recorded, Reason::listener,
                Reason::listener, Reason::listener});
}

TEST_CASE("nobody listens on the eve, nor to the first half of the run-throughs") {
  CHECK(witnessed_runs({14, 9, 2, 1}) ==
        Reasons{Reason::whole, Reason::recorded, Reason::listener, Reason::whole});
  CHECK(witnessed_runs({1}) == Reasons{Reason::recorded});
  CHECK(witnessed_runs({}).empty());
}

}  // namespace cahier
