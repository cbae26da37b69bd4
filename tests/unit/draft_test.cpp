// What a day takes of spoken and written work, and what makes it worth sitting down for.
#include "plan/schedule/draft.h"

#include "catch.h"
#include "drafted.h"
#include "plan/schedule/thin_days.h"

namespace cahier {
namespace {

void put(Draft& draft, int day, Task task, double minutes) {
  task.minutes = minutes;
  draft.put(std::move(task), day);
}

}  // namespace

TEST_CASE("spoken and written work takes a quarter of a piece's minutes at most", "[numbers]") {
  sample::Drafted work("bars: 48\npractice: {temper: yes}\n", sample::fours(12), 60, 60);
  work.learn_all();
  work.progress().recalls.retrieve(work.progress().make.slow_pass({1, 48}), 1);
  put(work.draft, 5, work.progress().make.recall({1, 48}), 30);
  work.draft.temper(10);
  const double minutes = work.draft.schedule.days[10].minutes();
  CHECK(minutes <= 10);  // of forty
  CHECK(minutes > 5);
}

TEST_CASE("a day of less than three minutes gets a join more", "[numbers]") {
  const auto fills = [](double minutes) {
    sample::Drafted work("bars: 32\n", sample::fours(8), 60, 60);
    work.learn_all();
    work.recall_all(1);
    put(work.draft, 5, work.progress().make.recall({1, 4}), minutes);
    ThinDays().fill(work.draft, 5);
    return work.count_on(5) > 1;
  };
  CHECK(fills(2.5));
  CHECK_FALSE(fills(3));
}

TEST_CASE("the same bars fill no two thin days within five", "[numbers]") {
  sample::Drafted work("bars: 16\n", sample::fours(4), 60, 60);
  work.learn_all();
  work.recall_all(1);
  ThinDays thin_days;
  std::vector<int> filled;
  for (int day = 5; day < 20; ++day) {
    put(work.draft, day, work.progress().make.run_through(), 1);
    work.draft.schedule.days[day].tasks.back().chunks.clear();
    thin_days.fill(work.draft, day);
    if (work.count_on(day) > 1) filled.push_back(day);
  }
  CHECK(filled == std::vector<int>{5, 10, 15});
}

}  // namespace cahier
