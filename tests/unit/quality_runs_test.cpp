// When run-throughs come, and how the days are used: figures 1, 2, 3, 11, 12, 13.
#include "catch.h"
#include "quality_plan.h"

using namespace cahier;
using namespace cahier::sample;

namespace {

using Lacks = std::vector<Lack>;

// A practice day of one task that takes so many minutes.
void work(Plan& plan, int day, double minutes) {
  Task task = played(plan, Drill::join, {1, 4});
  task.minutes = minutes;
  put(plan, day, task);
}

// A day's tasks and more, so that it is full.
void fill(Plan& plan, int first, int last) {
  for (int day = first; day <= last; ++day)
    work(plan, day, plan.days[day].allowance - plan.days[day].minutes());
}

}  // namespace

TEST_CASE("the first run-through comes at most ten days after the last new bars", "[numbers]") {
  const auto with_run_on = [](int day, int days_left = 40) {
    Plan plan = learned_plan(days_left);
    run_on(plan, {day});
    return plan;
  };
  const auto kind = FigureKind::first_run_through;
  CHECK(figure_of(with_run_on(kAllLearned + 5), kind).value().figure == 5);
  CHECK(figure_of(with_run_on(kAllLearned + 10), kind).value().met);
  const QualityFigure late = figure_of(with_run_on(kAllLearned + 11), kind).value();
  CHECK_FALSE(late.met);
  CHECK(late.figure == 11);
  REQUIRE(late.why.size() == 1);
  CHECK(late.why[0].lack == Lack::first_run_late);
  CHECK(late.why[0].dates == std::vector{parse_date("2027-01-18").value()});
  // It holds from 21 days left on.
  CHECK(figure_of(with_run_on(kAllLearned + 11, 21), kind).has_value());
  CHECK_FALSE(figure_of(with_run_on(kAllLearned + 11, 20), kind).has_value());
  // Without any, the date is the first.
  CHECK(figure_of(learned_plan(40), kind).value().figure == 40);
  CHECK(lacks_of(learned_plan(40), kind) == Lacks{Lack::first_run_missing});
}

TEST_CASE("what would make room for a run-through is said only where the days are full",
          "[numbers]") {
  const auto mend_of = [](const Plan& plan) {
    return figure_of(plan, FigureKind::first_run_through).value().why.at(0).mend;
  };
  Plan plan = learned_plan(40);
  run_on(plan, {kAllLearned + 20});
  CHECK(mend_of(plan) == Mend::unsaid);
  fill(plan, kAllLearned + 1, kAllLearned + 9);
  CHECK(mend_of(plan) == Mend::unsaid);
  fill(plan, kAllLearned + 10, kAllLearned + 10);
  CHECK(mend_of(plan) == Mend::more_minutes);
  plan.days[kAllLearned + 4].tasks.clear();
  plan.days[kAllLearned + 4].allowance = 0;
  CHECK(mend_of(plan) == Mend::fewer_days_off);
}

TEST_CASE("what was run before the edition is done", "[numbers]") {
  Plan plan = learned_plan(60);
  run_on(plan, {kAllLearned + 30, kAllLearned + 41});
  REQUIRE_FALSE(figure_of(plan, FigureKind::first_run_through).value().met);
  // The plan begins on the day after the first run-through.
  const auto begin = plan.days.begin() + kAllLearned + 31;
  plan.past.assign(plan.days.begin(), begin);
  plan.days.erase(plan.days.begin(), begin);
  plan.from = plan.days.front().date;
  CHECK_FALSE(figure_of(plan, FigureKind::first_run_through).has_value());
  // But the days to the next one count.
  const QualityFigure gap = figure_of(plan, FigureKind::between_run_throughs).value();
  CHECK(gap.figure == 11);
  // One that is overdue counts from the plan's first day.
  plan.past.back().tasks.clear();
  CHECK(figure_of(plan, FigureKind::first_run_through).value().figure == 10);
}

TEST_CASE("the days between run-throughs are few, and more where more are left", "[numbers]") {
  const auto kind = FigureKind::between_run_throughs;
  const auto apart = [&](int gap, int left) {
    Plan plan = learned_plan(left + 5);
    run_on(plan, {kAllLearned + 5, kAllLearned + 5 + gap});
    return figure_of(plan, kind).value();
  };
  CHECK(apart(10, 69).met);
  CHECK_FALSE(apart(11, 69).met);
  CHECK(apart(11, 69).why.at(0).dates.size() == 2);
  CHECK(apart(14, 70).met);
  CHECK_FALSE(apart(15, 70).met);
  CHECK_FALSE(apart(15, 179).met);
  CHECK(apart(21, 180).met);
  CHECK_FALSE(apart(22, 180).met);
  CHECK(apart(22, 180).wanted.at_most == 21);
  Plan plan = learned_plan(20);
  run_on(plan, {5, 20});
  CHECK_FALSE(figure_of(plan, kind).has_value());
}

TEST_CASE("at most half of the run-throughs come in the last seven days", "[numbers]") {
  const auto kind = FigureKind::not_at_the_end;
  Plan plan = learned_plan(30);
  const int by = kAllLearned + 30;
  run_on(plan, {10, 20, by - 7, by - 3});
  CHECK(figure_of(plan, kind).value().met);
  CHECK(figure_of(plan, kind).value().figure == 0.5);
  run_on(plan, {by - 4});
  CHECK(figure_of(plan, kind).value().figure == Approx(0.6));
  CHECK(lacks_of(plan, kind) == Lacks{Lack::runs_at_the_end});
  run_on(plan, {by - 8});  // no longer of the last seven days
  CHECK(figure_of(plan, kind).value().met);
}

TEST_CASE("the last two days have one run-through each, and the last is light", "[numbers]") {
  const auto kind = FigureKind::not_at_the_end;
  Plan plan = learned_plan(7);
  const int by = kAllLearned + 7;
  put(plan, by - 3, whole_run(2));
  put(plan, by - 2, whole_run(1));
  work(plan, by - 1, 30);
  CHECK(figure_of(plan, kind).value().met);
  CHECK(figure_of(plan, kind).value().figure ==
        1);  // of the run-throughs: the nearest to its bound
  Plan twice = plan;
  put(twice, by - 2, whole_run(1));
  CHECK(lacks_of(twice, kind) == Lacks{Lack::runs_on_one_day});
  Plan heavy = plan;
  work(heavy, by - 1, 0.5);
  CHECK(lacks_of(heavy, kind) == Lacks{Lack::last_day_full});
  // A single run-through is light, however long.
  heavy.days[by - 1].tasks = {whole_run()};
  heavy.days[by - 1].tasks[0].minutes = 60;
  CHECK(figure_of(heavy, kind).value().met);
  CHECK_FALSE(figure_of(learned_plan(6), kind).has_value());
}

TEST_CASE("at most a quarter of the days use less than a third of their minutes", "[numbers]") {
  const auto kind = FigureKind::use_of_time;
  Plan plan = learned_plan(22);
  for (int day = kAllLearned + 1; day <= kAllLearned + 9; ++day) work(plan, day, 20);
  for (int day = kAllLearned + 10; day <= kAllLearned + 12; ++day) work(plan, day, 19.5);
  CHECK(figure_of(plan, kind).value().figure == 0.25);
  CHECK(figure_of(plan, kind).value().met);
  Plan more = plan;
  work(more, kAllLearned + 13, 19.5);
  CHECK_FALSE(figure_of(more, kind).value().met);
  CHECK(figure_of(more, kind).value().why.at(0).dates.size() == 4);
  // The last two practice days are not counted.
  Plan last = plan;
  work(last, kAllLearned + 20, 1);
  work(last, kAllLearned + 21, 1);
  CHECK(figure_of(last, kind).value().met);
  work(last, kAllLearned + 19, 1);
  CHECK_FALSE(figure_of(last, kind).value().met);
}

TEST_CASE("the use of time is asked where fourteen practice days and two follow the last new bars",
          "[numbers]") {
  CHECK(figure_of(learned_plan(17), FigureKind::use_of_time).has_value());
  CHECK_FALSE(figure_of(learned_plan(16), FigureKind::use_of_time).has_value());
  Plan plan = learned_plan(17);
  plan.days[8].allowance = 0;
  CHECK_FALSE(figure_of(plan, FigureKind::use_of_time).has_value());
}

TEST_CASE("weekdays that are always thin could be free", "[numbers]") {
  Plan plan = learned_plan(29);
  // Thursday 7 January has the last new bars; the next Tuesday is five days on.
  for (int day = kAllLearned + 5; day < kAllLearned + 26; day += 7) {
    work(plan, day, 5);
    work(plan, day + 1, 5);
  }
  work(plan, kAllLearned + 6, 50);  // one Wednesday is full
  const QualityFigure figure = figure_of(plan, FigureKind::use_of_time).value();
  REQUIRE(figure.why.size() == 2);
  CHECK(figure.why[1].lack == Lack::free_weekdays);
  REQUIRE(figure.why[1].dates.size() == 1);
  CHECK(weekday_index(figure.why[1].dates[0]) == 1);
}

namespace {

// Four chunks learned on days given; the date is `length` days away.
Plan learned_on(int length, const std::vector<int>& on) {
  Plan plan = empty_plan(length);
  const auto& chunks = plan.pieces[0].chunks;
  for (int chunk = 0; chunk < 4; ++chunk)
    put(plan, on[chunk], sound::learn(chunks[chunk].bars, chunk));
  return plan;
}

}  // namespace

TEST_CASE("learning is spread over a third to a half of the practice days", "[numbers]") {
  const auto kind = FigureKind::spread;
  CHECK(figure_of(learned_on(54, {0, 6, 12, 17}), kind).value().met);  // 18 of 54 days
  CHECK(lacks_of(learned_on(54, {0, 6, 12, 16}), kind) == Lacks{Lack::learned_early});
  CHECK(figure_of(learned_on(54, {0, 9, 18, 26}), kind).value().met);
  CHECK(lacks_of(learned_on(54, {0, 9, 18, 27}), kind) == Lacks{Lack::learned_late});
  CHECK(figure_of(learned_on(54, {0, 9, 18, 27}), kind).value().wanted.at_most == 0.5);
}

TEST_CASE("spreading leaves eight weeks where full pace leaves them", "[numbers]") {
  const auto kind = FigureKind::spread;
  // 30 of 90 days are a third; with 34 there would be 56 left.
  CHECK(figure_of(learned_on(90, {0, 11, 22, 34}), kind).value().met);
  CHECK(lacks_of(learned_on(90, {0, 11, 22, 35}), kind) == Lacks{Lack::learned_late});
  // Of 70 days a third are 23, but only 15 leave eight weeks: then half of the way from full pace.
  const Plan plan = learned_on(70, {0, 4, 8, 14});
  CHECK(figure_of(plan, kind).value().met);
  CHECK(figure_of(plan, kind).value().wanted.at_most == Approx(15.0 / 70));
  CHECK(lacks_of(learned_on(70, {0, 1, 2, 3}), kind) == Lacks{Lack::learned_early});
}

TEST_CASE("one chunk a day is new, where the date does not need a second", "[numbers]") {
  const auto kind = FigureKind::spread;
  CHECK(lacks_of(learned_on(54, {0, 9, 18, 18}), kind) == Lacks{Lack::two_new});
  // Without slack nothing is asked: full pace ends after a third of the days.
  Plan tight = learned_on(54, {0, 9, 18, 18});
  for (Day& day : tight.days) day.allowance = 4;
  CHECK(figure_of(tight, kind).has_value());
  for (Day& day : tight.days) day.allowance = 2.5;
  CHECK_FALSE(figure_of(tight, kind).has_value());
  CHECK_FALSE(figure_of(learned_on(40, {0, 10, 15, 20}), kind).has_value());  // 19 days left
}

TEST_CASE("new bars come in no two blocks", "[numbers]") {
  const auto kind = FigureKind::spread;
  // The mean is 6 days (23 by 4), so 12 without anything new may lie between.
  CHECK(figure_of(learned_on(54, {0, 1, 14, 22}), kind).value().met);
  CHECK(lacks_of(learned_on(54, {0, 1, 15, 22}), kind) == Lacks{Lack::new_in_blocks});
}

TEST_CASE("three recalls come in the first ten days of a chunk, where minutes allow", "[numbers]") {
  const auto kind = FigureKind::criterion;
  const auto recalled = [](const std::vector<int>& on) {
    Plan plan = learned_plan(30);
    // The others have theirs.
    for (const int day : {5, 6, 7}) play(plan, day, Drill::recall, {5, 16});
    for (const int day : on) play(plan, day, Drill::recall, {1, 4});
    return plan;
  };
  CHECK(figure_of(recalled({1, 4, 9}), kind).value().met);
  CHECK(figure_of(recalled({1, 4, 10}), kind).value().met);  // learned on day 0
  const QualityFigure late = figure_of(recalled({1, 4, 11}), kind).value();
  CHECK(late.figure == 0.75);
  CHECK(late.why.at(0).bars == std::vector{BarRange{1, 4}});
  CHECK_FALSE(figure_of(recalled({1, 4, 4}), kind).value().met);  // on different days
  CHECK_FALSE(figure_of(recalled({0, 1, 4}), kind).value().met);  // a night between
  Plan full = recalled({1, 4, 11});
  fill(full, 1, 10);
  CHECK(figure_of(full, kind).value().met);
  full.days[8].tasks.clear();
  CHECK_FALSE(figure_of(full, kind).value().met);
}

TEST_CASE("a recall that slipped was not correct", "[numbers]") {
  Plan plan = learned_plan(30);
  for (const int day : {5, 6, 7}) play(plan, day, Drill::recall, {1, 16});
  const auto begin = plan.days.begin() + 6;
  plan.past.assign(plan.days.begin(), begin);
  plan.days.erase(plan.days.begin(), begin);
  plan.from = plan.days.front().date;
  REQUIRE(figure_of(plan, FigureKind::criterion).value().met);
  Done done;
  done.date = plan.past.back().date;
  done.bars = {1, 16};
  done.slips = {{6}};
  plan.record.done = {done};
  CHECK(figure_of(plan, FigureKind::criterion).value().why.at(0).bars ==
        std::vector{BarRange{5, 8}});
}
