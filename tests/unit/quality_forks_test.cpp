// Forks, and spoken and written work: figures 8 and 9.
#include "catch.h"
#include "quality_plan.h"

using namespace cahier;
using namespace cahier::sample;

namespace {

using Lacks = std::vector<Lack>;
using Bars = std::vector<BarRange>;

}  // namespace

namespace {

// Look-alikes that part at bars 3 and 11; starts from 1 and 9 drill both ways on.
Plan drilled_on(int days_left, const std::vector<int>& on,
                const std::vector<PlayedWay>& ways = {{2, 3}, {10, 11}}) {
  Plan plan = learned_plan(days_left);
  PlannedPiece& planned = plan.pieces[0];
  planned.piece.look_alikes = {{{{1, 4}, {9, 12}}, {3, 11}}};
  planned.forks = forks_of(planned.piece);
  for (const int day : on) {
    Task task = sound::task(Drill::cue_starts, {1, 12}, {0, 2}, 2);
    task.fork = true;
    task.ways = ways;
    task.from_starts = {{1, 4}, {9, 12}};
    put(plan, day, task);
  }
  return plan;
}

}  // namespace

TEST_CASE("each way on at a fork is drilled three times, farther and farther apart", "[numbers]") {
  const auto kind = FigureKind::forks;
  const int by = kAllLearned + 40;
  CHECK(figure_of(drilled_on(40, {10, 19, by - 14}), kind).value().met);
  CHECK(lacks_of(drilled_on(40, {10, 20, by - 13}), kind) == Lacks{Lack::fork_not_growing});
  CHECK(lacks_of(drilled_on(40, {10, 18, by - 15}), kind) == Lacks{Lack::fork_early});
  CHECK(lacks_of(drilled_on(40, {10, by - 14}), kind) == Lacks{Lack::fork_seldom});
  CHECK(lacks_of(drilled_on(40, {10, 10, by - 14}), kind) == Lacks{Lack::fork_seldom});
  // More between does not count against it.
  CHECK(figure_of(drilled_on(40, {10, 15, 29, 35, 40}), kind).value().met);
}

TEST_CASE("with less than 28 days left a fork needs one drill in the last fortnight", "[numbers]") {
  const auto kind = FigureKind::forks;
  CHECK(figure_of(drilled_on(27, {20}), kind).value().met);
  CHECK_FALSE(figure_of(drilled_on(28, {20}), kind).value().met);
  CHECK(lacks_of(drilled_on(27, {15}), kind) == Lacks{Lack::fork_early});
  CHECK(figure_of(drilled_on(27, {16}), kind).value().met);
  CHECK_FALSE(figure_of(drilled_on(20, {}), kind).has_value());
  CHECK_FALSE(figure_of(learned_plan(40), kind).has_value());  // no forks
}

TEST_CASE("a fork drill counts for the ways that it plays, from starts just before them",
          "[numbers]") {
  Plan plan = drilled_on(27, {20}, {{10, 11}});
  const QualityFigure figure = figure_of(plan, FigureKind::forks).value();
  CHECK(figure.figure == 0.5);
  CHECK(figure.why.at(0).bars == Bars{{3, 3}});
  plan = drilled_on(27, {20});
  plan.method.chunk_most = 1;  // the starts lie two bars before
  CHECK(figure_of(plan, FigureKind::forks).value().figure == 0);
  plan = drilled_on(27, {20});
  for (Task& task : plan.days[20].tasks) task.fork = false;
  CHECK(figure_of(plan, FigureKind::forks).value().figure == 0);
}

namespace {

// Everything is in its passes on day 5, the seams joined on day 4, sections played, and run on
// day 10; the minutes without spoken and written work are 52.
Plan proven(int days_left = 30) {
  Plan plan = learned_plan(days_left);
  play(plan, 4, Drill::join, {1, 16});
  for (const Drill drill : {Drill::slow_pass, Drill::counted_pass}) play(plan, 5, drill, {1, 16});
  run_on(plan, {10});
  double minutes = 0;
  for (const Day& day : plan.days) minutes += day.minutes();
  plan.days[5].tasks[0].minutes += 60 - minutes;
  return plan;
}

void speak(Plan& plan, int day, int chunk, double minutes = 2) {
  Task task = sound::speak(plan.pieces[0].chunks[chunk].bars, chunk);
  task.minutes = minutes;
  put(plan, day, task);
}

const auto kTemper = FigureKind::spoken_and_written;

}  // namespace

TEST_CASE("spoken and written work takes a quarter of the minutes at most", "[numbers]") {
  CHECK_FALSE(figure_of(proven(), kTemper).has_value());
  Plan plan = proven();
  speak(plan, 6, 0, 20);
  CHECK(figure_of(plan, kTemper).value().met);
  CHECK(figure_of(plan, kTemper).value().figure == 0.25);
  plan.days[6].tasks[0].minutes = 20.5;
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_share});
}

TEST_CASE("the last seven days have no spoken and written work", "[numbers]") {
  Plan plan = proven();
  const int by = kAllLearned + 30;
  speak(plan, by - 8, 0);
  CHECK(figure_of(plan, kTemper).value().met);
  speak(plan, by - 7, 1);
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_at_the_end});
  Plan near = proven(20);
  speak(near, kAllLearned + 20 - 7, 0);
  CHECK(figure_of(near, kTemper).value().met);
}

TEST_CASE("the same bars are spoken or written at most twice in a week", "[numbers]") {
  Plan plan = proven();
  speak(plan, 6, 0);
  put(plan, 8, sound::write_out({1, 4}, 0));
  CHECK(figure_of(plan, kTemper).value().met);
  Plan more = plan;
  speak(more, 13, 0);  // seven days after the first
  CHECK(figure_of(more, kTemper).value().met);
  speak(plan, 12, 0);
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_too_often});
  CHECK(figure_of(plan, kTemper).value().figure == 3);
}

TEST_CASE("bars are spoken or written after a slow or counted pass, the weakest first",
          "[numbers]") {
  Plan plan = proven();
  speak(plan, 4, 0);
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_before_pass});
  plan = proven();
  plan.pieces[0].chunks[2].level = 4;
  speak(plan, 6, 0);
  speak(plan, 7, 2);
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_before_weaker});
  plan = proven();
  plan.pieces[0].chunks[2].level = 4;
  speak(plan, 6, 2);
  speak(plan, 7, 0);
  CHECK(figure_of(plan, kTemper).value().met);
}

TEST_CASE("spoken and written work stands in place of nothing", "[numbers]") {
  const auto on_day_12 = [](Plan plan) {
    speak(plan, 12, 0);
    return plan;
  };
  CHECK(figure_of(on_day_12(proven()), kTemper).value().met);
  Plan no_run = proven();
  no_run.days[10].tasks.clear();
  run_on(no_run, {14});
  CHECK(lacks_of(on_day_12(no_run), kTemper) == Lacks{Lack::temper_in_place});
  no_run.days[12].tasks.clear();
  speak(no_run, 15, 0);  // after the days in which it should have come
  CHECK(figure_of(no_run, kTemper).value().met);
  Plan no_pass = proven();
  std::erase_if(no_pass.days[5].tasks,
                [](const Task& task) { return task.drill == Drill::counted_pass; });
  CHECK(lacks_of(on_day_12(no_pass), kTemper) == Lacks{Lack::temper_in_place});
  Plan no_section = proven();  // A is in two passes, and whole in none
  no_section.days[5].tasks.clear();
  for (const BarRange bars : Bars{{1, 4}, {5, 16}})
    for (const Drill drill : {Drill::slow_pass, Drill::counted_pass})
      play(no_section, 5, drill, bars);
  for (const BarRange bars : Bars{{1, 4}, {5, 16}}) play(no_section, 6, Drill::recall, bars);
  speak(no_section, 15, 0);
  CHECK(lacks_of(no_section, kTemper) == Lacks{Lack::temper_in_place});
  no_section.days[15].tasks.clear();
  speak(no_section, 16, 0);  // after its days
  CHECK(figure_of(no_section, kTemper).value().met);
  Plan no_seam = proven();
  no_seam.days[4].tasks.clear();
  no_seam.days[11].tasks = no_seam.days[5].tasks;
  no_seam.days[5].tasks.clear();
  speak(no_seam, 11, 0);
  CHECK(figure_of(no_seam, kTemper).value().met);  // day 10 was the last of the seams' days
  no_seam = proven();
  no_seam.days[4].tasks.clear();
  no_seam.days[5].tasks.clear();
  for (const BarRange bars : Bars{{1, 4}, {5, 8}, {9, 12}, {13, 16}})
    for (const Drill drill : {Drill::slow_pass, Drill::counted_pass}) play(no_seam, 5, drill, bars);
  play(no_seam, 12, Drill::recall, {1, 16});
  speak(no_seam, 6, 0);
  CHECK(lacks_of(no_seam, kTemper).back() == Lack::temper_in_place);
}
