#include "plan/spacing_report.h"

#include <initializer_list>

#include "catch.h"
#include "sound_plan.h"

using namespace cahier;

namespace {

const Date kFrom = parse_date("2027-01-04").value();

// A piece of two chunks; nothing is placed yet. Days are counted from 0.
Plan empty_plan(int length, std::initializer_list<int> days_off = {}) {
  Plan plan;
  plan.from = kFrom;
  plan.by = kFrom + days{length};
  plan.method = sample::steady();
  plan.pieces = {sound::small_planned_piece()};
  for (int day = 0; day < length; ++day) {
    Day made;
    made.date = kFrom + days{day};
    made.allowance = 15;
    plan.days.push_back(made);
  }
  for (const int day : days_off) plan.days[day].allowance = 0;
  return plan;
}

// The first chunk, learned on day 0 and recalled on the days given.
Plan recalled_on(Plan plan, std::initializer_list<int> recalls) {
  plan.days[0].tasks = {sound::learn({1, 4}, 0)};
  for (const int day : recalls) plan.days[day].tasks.push_back(sound::recall({1, 4}, {0}));
  return plan;
}

// A best gap of two and a half days, whatever the days left.
Plan with_even_gaps(Plan plan) {
  plan.method.spacing = {{7.5, 2.5}, {97.5, 2.5}};
  return plan;
}

using Days = std::vector<int>;

Days numbers(const std::vector<Date>& dates) {
  Days found;
  for (const Date date : dates) found.push_back(static_cast<int>((date - kFrom).count()));
  return found;
}

Days ideal(const Plan& plan) { return numbers(spacing_report(plan).chunks.at(0).ideal); }

}  // namespace

TEST_CASE("what is played between recalls at the best gaps does not count against them") {
  // The best gap is 3 * (T / 10)^0.6724 days for T days left up to 43, computed from the pairs of
  // Cepeda et al. 2008: 3.58, 3.39, 2.80, 2.36, 2.13, 1.62 and 1.02 for T = 13, 12, 9, 7, 6, 4 and
  // 2. The last day, the thirteenth, is a Sunday off.
  const SpacingReport report = spacing_report(sound_plan());
  REQUIRE(report.chunks.size() == 2);
  const ChunkSpacing& first = report.chunks[0];
  CHECK(numbers(first.recalls) == Days{1, 2, 4, 7, 10, 12});
  CHECK(numbers(first.ideal) == Days{1, 5, 8, 10, 12});
  // Days 1, 4, 7, 10, 12: what is played on day 2 besides is welcome.
  CHECK(first.near == 4);
  CHECK(first.gaps == 4);
  const ChunkSpacing& second = report.chunks[1];
  CHECK(second.chunk == 1);
  CHECK(numbers(second.recalls) == Days{2, 4, 7, 10, 12});
  CHECK(numbers(second.ideal) == Days{2, 5, 8, 10, 12});
  CHECK(second.near == 4);
  CHECK(second.gaps == 4);
  CHECK(report.near_share() == 1);
  CHECK(report.forced_by_days_off == 0);
}

TEST_CASE("the ideal days begin at the published gaps when the published days are left") {
  // Cepeda, Vul, Rohrer, Wixted, Pashler 2008: best gaps of 3, 8, 12, 27 days for delays of 7, 35,
  // 70, 350 days between the last review and the date.
  const int pairs[][2] = {{3, 7}, {8, 35}, {12, 70}, {27, 350}};
  for (const auto& [gap, delay] : pairs) {
    const Plan plan = recalled_on(empty_plan(1 + gap + delay), {1});
    INFO(gap << " and " << delay);
    CHECK(ideal(plan).at(1) == 1 + gap);
  }
}

TEST_CASE("half and twice the best gap are both near, less and more are not") {
  const auto near = [](int gap) {
    return spacing_report(with_even_gaps(recalled_on(empty_plan(30), {1, 1 + gap}))).near;
  };
  CHECK(near(1) == 0);
  CHECK(near(2) == 1);
  CHECK(near(5) == 1);
  CHECK(near(6) == 0);
  // Half of four days is two.
  Plan plan = recalled_on(empty_plan(30), {1, 3});
  plan.method.spacing = {{6, 4}, {96, 4}};
  CHECK(spacing_report(plan).near == 1);
}

TEST_CASE("an ideal gap between two whole days is the longer one") {
  CHECK(ideal(with_even_gaps(recalled_on(empty_plan(12), {1}))) == Days{1, 4, 7, 10});
}

TEST_CASE("an ideal day that is off moves to the nearest practice day, of two to the later") {
  const auto moved = [](std::initializer_list<int> days_off) {
    return ideal(with_even_gaps(recalled_on(empty_plan(12, days_off), {1})));
  };
  CHECK(moved({4}) == Days{1, 5, 8, 11});
  CHECK(moved({4, 8, 9}) == Days{1, 5, 7, 10});
  CHECK(moved({4, 5}) == Days{1, 3, 6, 9});
  // Never back to the recall before, however near that is.
  CHECK(moved({2, 3, 4, 5, 6, 7, 8}) == Days{1, 9});
  CHECK(moved({2, 3, 4, 5, 6, 7, 8, 9, 10, 11}) == Days{1});
  CHECK(moved({10, 11}) == Days{1, 4, 7, 9});
}

TEST_CASE("days off force a gap only when it ends on the very next practice day") {
  // With 29 days left the best gap is 6.1 days.
  const auto forced = [](std::initializer_list<int> days_off, int recall) {
    const SpacingReport report = spacing_report(recalled_on(empty_plan(30, days_off), {1, recall}));
    CHECK(report.near == 0);
    return report.forced_by_days_off;
  };
  const auto week_and_half = {2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13};
  CHECK(forced(week_and_half, 14) == 1);
  CHECK(forced(week_and_half, 15) == 0);
  CHECK(forced({2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}, 14) == 0);
  CHECK(forced({}, 14) == 0);
  // A gap that is too short is never forced.
  CHECK(forced({}, 2) == 0);
}

TEST_CASE("whatever is played from memory recalls what it covers, and nothing else does") {
  for (const DrillFacts& facts : every_drill()) {
    const Drill drill = facts.drill;
    if (drill == Drill::learn) continue;
    Plan plan = empty_plan(20);
    plan.days[0].tasks = {sound::learn({1, 4}, 0), sound::learn({5, 8}, 1)};
    plan.days[3].tasks = {sound::task(drill, {5, 8}, {1}, 2)};
    const bool counts = drill == Drill::recall || drill == Drill::cue_starts ||
                        drill == Drill::slow_pass || drill == Drill::counted_pass ||
                        drill == Drill::run_through;
    INFO(drill_word(drill));
    const SpacingReport report = spacing_report(plan);
    CHECK(report.chunks.at(0).recalls.empty());
    CHECK(numbers(report.chunks.at(1).recalls) == (counts ? Days{3} : Days{}));
  }
}

TEST_CASE("a day counts once, and not on the day of learning, for memory takes a night") {
  // Simmons 2012, JRME 59:357-368: accuracy rose in the second session only after a night.
  Plan plan = recalled_on(empty_plan(20), {2, 2, 5});
  plan.days[0].tasks.push_back(sound::task(Drill::cue_starts, {1, 4}, {0}, 2));
  plan.days[5].tasks.push_back(sound::runs(1));
  const ChunkSpacing line = spacing_report(plan).chunks.at(0);
  CHECK(numbers(line.recalls) == Days{2, 5});
  CHECK(line.gaps == 1);
}

TEST_CASE("a chunk that is not recalled twice has no gap; one that is not learned has no line") {
  const SpacingReport once = spacing_report(recalled_on(empty_plan(20), {1}));
  REQUIRE(once.chunks.size() == 1);
  CHECK(once.chunks[0].gaps == 0);
  CHECK(once.chunks[0].ideal.size() > 1);
  CHECK(once.gaps == 0);
  CHECK(once.near_share() == 1);
  const SpacingReport never = spacing_report(recalled_on(empty_plan(20), {}));
  REQUIRE(never.chunks.size() == 1);
  CHECK(never.chunks[0].recalls.empty());
  CHECK(never.chunks[0].ideal.empty());
  CHECK(spacing_report(empty_plan(20)).chunks.empty());
}

TEST_CASE("of several pieces each chunk is told with its own piece") {
  Plan plan = sound_plan();
  plan.pieces.push_back(plan.pieces[0]);
  for (Task& task : plan.days[0].tasks) task.piece = 1;
  for (Task& task : plan.days[1].tasks) task.piece = task.drill == Drill::learn ? 0 : 1;
  const SpacingReport report = spacing_report(plan);
  REQUIRE(report.chunks.size() == 2);
  CHECK(report.chunks[0].piece == 0);
  CHECK(report.chunks[0].chunk == 1);
  CHECK(report.chunks[1].piece == 1);
  CHECK(report.chunks[1].chunk == 0);
  CHECK(numbers(report.chunks[1].recalls) == Days{1});
}
