// Where the date leaves far more time than the piece needs.
#include "catch.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

const Plan& easy_song() {
  static const Plan plan =
      make_plan({sample::piece("title: Song\nbars: 24\nmeter: 3/4\ntempo: 96\n")},
                settle(
                    sample::date("2027-01-04"), sample::date("2027-03-29"),
                    [] {
                      Wishes wishes;
                      wishes.minutes.emplace();
                      wishes.minutes->fill(20);
                      return wishes;
                    }(),
                    sample::steady()));
  return plan;
}

bool has_run(const Day& day) {
  return std::any_of(day.tasks.begin(), day.tasks.end(),
                     [](const Task& task) { return task.drill == Drill::run_through; });
}

}  // namespace

TEST_CASE("two days with little become one worth sitting down for", "[numbers]") {
  const Plan& plan = easy_song();
  REQUIRE(plan.fits);
  const auto first =
      std::find_if(plan.days.begin(), plan.days.end(), [](const Day& day) { return has_run(day); });
  int days_asked = 0;
  int free = 0;
  for (auto day = first + 1; day->date < plan.by - days{7}; ++day) {
    ++days_asked;
    free += day->tasks.empty() ? 1 : 0;
    INFO(iso(day->date));
    const auto little = [](const Day& one) {
      return !one.tasks.empty() && one.minutes() < one.allowance / 3;
    };
    CHECK_FALSE((little(*day) && little(*(day - 1))));
  }
  CHECK(days_asked > 28);
  CHECK(free * 2 > days_asked);
  CHECK(free * 4 < days_asked * 3);
}

TEST_CASE("a day before a run-through is rather left free than the one after it thin",
          "[numbers]") {
  const Plan& plan = easy_song();
  int runs = 0;
  int with_more = 0;
  for (const Day& day : plan.days)
    if (has_run(day)) {
      ++runs;
      with_more += day.tasks.size() > 1 ? 1 : 0;
    }
  CHECK(runs >= 5);
  CHECK(with_more >= runs - 1);
}
