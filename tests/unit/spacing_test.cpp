#include "practice/best_gap.h"

#include <cmath>

#include "catch.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

// Cepeda, Vul, Rohrer, Wixted, Pashler 2008, Psychological Science 19(11):1095-1102: best gaps of
// 3, 8, 12, 27 days for delays of 7, 35, 70, 350 days.
Method published() {
  Method method = sample::steady();
  method.spacing = {{7, 3}, {35, 8}, {70, 12}, {350, 27}};
  return method;
}

}  // namespace

TEST_CASE("the best gap meets the four published pairs") {
  const Method method = published();
  CHECK(best_gap(method, 10) == Approx(3).margin(0.5));
  CHECK(best_gap(method, 43) == Approx(8).margin(0.5));
  CHECK(best_gap(method, 82) == Approx(12).margin(0.5));
  CHECK(best_gap(method, 377) == Approx(27).margin(0.5));
}

TEST_CASE("between the published pairs the best gap follows straight lines of logarithms") {
  // Computed from the same pairs, log-log, within a day; here within the digits given.
  const Method method = published();
  const double horizons[][2] = {{14, 3.8}, {21, 5.0}, {28, 6.0}, {42, 7.9}, {56, 9.5}, {90, 12.6}};
  for (const auto& [horizon, gap] : horizons) {
    INFO("horizon " << horizon);
    CHECK(best_gap(method, horizon) == Approx(gap).margin(0.06));
  }
}

TEST_CASE("the best gap rises with the time left while its share of that time falls") {
  const Method method = published();
  for (int horizon = 2; horizon < 1000; ++horizon) {
    INFO("horizon " << horizon);
    REQUIRE(best_gap(method, horizon + 1) > best_gap(method, horizon));
    REQUIRE(best_gap(method, horizon + 1) / (horizon + 1) < best_gap(method, horizon) / horizon);
  }
}

TEST_CASE("the best gap is never less than a day") {
  const Method method = published();
  CHECK(best_gap(method, 1) == 1);
  CHECK(best_gap(method, 0) == 1);
  CHECK(best_gap_days(method, 1) == 1);
  CHECK(longest_gap_days(method, 1) >= 1);
}

TEST_CASE("a tie between two whole days goes to the longer gap") {
  // Gaps too long cost much less than gaps too short (Cepeda et al. 2008).
  Method method = sample::steady();
  method.spacing = {{7.5, 2.5}, {97.5, 2.5}};
  CHECK(best_gap_days(method, 10) == 3);
  CHECK(best_gap_days(method, 40) == 3);
}

TEST_CASE("the longest gap is twice the best one, rounded") {
  const Method method = published();
  CHECK(longest_gap_days(method, 10) == 6);
  CHECK(longest_gap_days(method, 43) == 16);
  CHECK(longest_gap_days(method, 82) == 24);
  CHECK(longest_gap_days(method, 377) == 54);
  // 2 * 3.76, computed.
  CHECK(longest_gap_days(method, 14) == 8);
}
