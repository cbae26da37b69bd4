#include "plan/search/least_step.h"

#include <set>

#include "catch.h"

namespace cahier {

TEST_CASE("the least step is found wherever it lies") {
  for (int most = 1; most <= 40; ++most)
    for (int least = 1; least <= most; ++least)
      for (const int ripple : {1, 2, 7})
        CHECK(least_step(most, ripple, [&](int step) { return step >= least; }) == least);
  CHECK_FALSE(least_step(40, 7, [](int) { return false; }));
}

TEST_CASE("a step that does not fit once a week hides no lesser one") {
  for (int least = 1; least <= 60; ++least)
    for (int gap = 0; gap < 7; ++gap) {
      const auto fits = [&](int step) { return step >= least && step % 7 != gap; };
      const int first = least % 7 == gap ? least + 1 : least;
      CHECK(least_step(366, 7, fits) == first);
    }
}

TEST_CASE("few steps are asked") {
  for (int least = 1; least <= 366; ++least) {
    int asked = 0;
    least_step(366, 2, [&](int step) {
      ++asked;
      return step >= least;
    });
    CHECK(asked <= 12);  // one, the 9 halvings of 366, and two below
  }
}

TEST_CASE("no step is asked for outside its bounds") {
  std::set<int> asked;
  least_step(9, 7, [&](int step) {
    asked.insert(step);
    return false;
  });
  least_step(9, 7, [&](int step) {
    asked.insert(step);
    return true;
  });
  CHECK(*asked.begin() == 1);
  CHECK(*asked.rbegin() == 9);
}

}  // namespace cahier
