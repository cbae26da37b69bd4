// When a piece that is kept is played again.
#include "plan/schedule/upkeep.h"

#include <algorithm>

#include "catch.h"
#include "practice/best_gap.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// Days of the plan with anything to play, up to the first run-throughs for the date, and those of
// them on which it is played through.
struct Sittings {
  std::vector<int> all;
  std::vector<int> whole;
};

Sittings sittings(int length) {
  const std::vector<Piece> pieces = {sample::piece("title: Kept\nbars: 16\n")};
  Wishes wishes = pieces.front().practice;
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-01-04") + days{length},
                       wishes, sample::steady());
  terms.upkeep = true;
  const Plan plan = make_plan(pieces, terms);
  Sittings found;
  for (const Day& day : plan.days) {
    if (day.tasks.empty()) continue;
    const int at = static_cast<int>((day.date - plan.from).count());
    found.all.push_back(at);
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) found.whole.push_back(at);
  }
  return found;
}

}  // namespace

TEST_CASE("a kept piece comes back after three days, then after twice as many", "[numbers]") {
  const Sittings found = sittings(200);
  REQUIRE(found.all.size() > 4);
  CHECK(std::vector<int>(found.all.begin(), found.all.begin() + 3) == std::vector<int>{2, 8, 20});
}

TEST_CASE("every third sitting of a kept piece is a run-through", "[numbers]") {
  const Sittings found = sittings(200);
  REQUIRE(found.all.size() > 6);
  CHECK(found.whole.front() == found.all[2]);
}

TEST_CASE("the last sitting of a kept piece leaves half a best gap before its run-throughs",
          "[numbers]") {
  double nearest = 100;  // in best gaps
  for (int length = 60; length < 80; ++length) {
    const Sittings found = sittings(length);
    // The five for the date; sittings before them are run-throughs at times.
    const int first_run = *(found.whole.end() - 5);
    const auto last = std::prev(std::find(found.all.begin(), found.all.end(), first_run));
    nearest = std::min(nearest, (first_run - *last) / best_gap(sample::steady(), length - *last));
  }
  CHECK(nearest >= 0.5);
  CHECK(nearest < 0.9);
}

}  // namespace cahier
