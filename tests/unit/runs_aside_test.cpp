// Which run-throughs are set aside.
#include "plan/schedule/runs_aside.h"

#include <numeric>

#include "catch.h"
#include "drafted.h"

namespace cahier {

TEST_CASE("one who has made all run-throughs plays it through twice more", "[numbers]") {
  sample::Drafted work("bars: 16\n", sample::fours(4), 40, 60);
  const auto set_aside = [&](int made) {
    work.progress().runs_made = work.progress().run_days_made = made;
    Pace pace;
    pace.learn_until = 3;
    set_runs_aside(work.draft, pace);
    const std::vector<int>& runs = work.progress().runs.runs;
    return std::accumulate(runs.begin(), runs.end(), 0);
  };
  CHECK(set_aside(5) == 2);
}

TEST_CASE("where learning ends before its share, another draft has the run-throughs sooner") {
  sample::Drafted work("bars: 16\n", sample::fours(4), 60, 60);
  Pace pace;
  pace.learn_until = 20;
  pace.more_runs = true;
  pace.chunks = 4;
  const int most = work.draft.work.terms.method.first_run_days;
  const auto laid_out = [&](int last_learned, int first_run) {
    Schedule schedule = work.draft.schedule;
    schedule.days[last_learned].tasks = {work.progress().make.learn(3)};
    schedule.days[first_run].tasks = {work.progress().make.run_through()};
    return with_sooner_runs(work.draft.work, pace, schedule);
  };
  CHECK_FALSE(laid_out(12, 12 + most));
  const auto sooner = laid_out(12, 13 + most);
  REQUIRE(sooner);
  CHECK(sooner->learned_on == std::vector<int>{12});
  set_runs_aside(work.draft, *sooner);
  CHECK(work.progress().next_run(-1) <= 12 + most);
}

}  // namespace cahier
