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

}  // namespace cahier
