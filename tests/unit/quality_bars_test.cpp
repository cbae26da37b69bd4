// What is played of the piece: figures 5, 6, 7, 8, 9, 10.
#include "catch.h"
#include "quality_plan.h"

using namespace cahier;
using namespace cahier::sample;

namespace {

using Lacks = std::vector<Lack>;
using Bars = std::vector<BarRange>;

const auto kStretches = FigureKind::growing_stretches;

// Both sections are played whole on a day; A is learned on day 1, B on day 3.
Plan with_sections(int a, int b) {
  Plan plan = learned_plan(30);
  play(plan, a, Drill::recall, {1, 8});
  play(plan, b, Drill::slow_pass, {9, 16});
  return plan;
}

}  // namespace

TEST_CASE("each section is played whole within fourteen days of its last new bars") {
  CHECK(figure_of(with_sections(15, 17), kStretches).value().met);
  const QualityFigure late = figure_of(with_sections(15, 18), kStretches).value();
  CHECK(late.figure == 0.5);
  REQUIRE(late.why.size() == 1);
  CHECK(late.why[0].bars == Bars{{9, 16}});
  // A night after learning, and by one recall or pass.
  CHECK_FALSE(figure_of(with_sections(1, 17), kStretches).value().met);
  Plan in_two = with_sections(15, 30);
  play(in_two, 10, Drill::recall, {9, 12});
  play(in_two, 10, Drill::recall, {13, 16});
  CHECK_FALSE(figure_of(in_two, kStretches).value().met);
}

TEST_CASE("a section counts with 21 days after its own last new bars") {
  Plan plan = learned_plan(20);  // of A 22
  CHECK(figure_of(plan, kStretches).value().why.at(0).bars == Bars{{1, 8}});
  play(plan, 10, Drill::recall, {1, 8});
  CHECK(figure_of(plan, kStretches).value().met);
}

TEST_CASE("a short section is not asked to be played whole") {
  Plan plan = with_sections(15, 30);
  plan.pieces[0].sections[1].bars.first = 10;
  CHECK(figure_of(plan, kStretches).value().met);
}

TEST_CASE("of a long section 32 bars at a time are enough") {
  Plan plan = empty_plan(40);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 64;
  piece.piece.sections.clear();
  piece.sections = {{"All", {1, 64}, {}}};
  piece.chunks = {{"A1", {1, 64}, 0, 2}};
  put(plan, 0, sound::learn({1, 64}, 0));
  Plan in_three = plan;
  for (const BarRange bars : Bars{{1, 20}, {21, 44}, {45, 64}})
    play(in_three, 5, Drill::recall, bars);
  CHECK_FALSE(figure_of(in_three, kStretches).value().met);
  play(plan, 5, Drill::recall, {1, 32});
  CHECK_FALSE(figure_of(plan, kStretches).value().met);
  play(plan, 6, Drill::recall, {33, 64});
  CHECK(figure_of(plan, kStretches).value().met);
}

TEST_CASE("each half of the piece is played whole before the first run-through") {
  Plan plan = learned_plan(30);
  plan.pieces[0].sections = {{"A", {1, 4}, {}}, {"B", {5, 8}, {}}, {"C", {9, 16}, {}}};
  play(plan, 5, Drill::recall, {9, 16});
  play(plan, 12, Drill::recall, {1, 8});
  run_on(plan, {13});
  CHECK(figure_of(plan, kStretches).value().met);
  plan.days[13].tasks.clear();
  run_on(plan, {12});
  const QualityFigure late = figure_of(plan, kStretches).value();
  CHECK(late.figure == Approx(2.0 / 3));  // of a section and two halves
  CHECK(lacks_of(plan, kStretches) == Lacks{Lack::half_not_whole});
  CHECK(late.why[0].bars == Bars{{1, 8}});
}

namespace {

// The seams 4|5, 8|9 and 12|13, whose sides are learned on days 1, 2 and 3, each joined on a day.
Plan joined_on(int first, int second, int third) {
  Plan plan = learned_plan(10);
  play(plan, first, Drill::join, {1, 8});
  play(plan, second, Drill::join, {5, 12});
  play(plan, third, Drill::join, {9, 16});
  return plan;
}

}  // namespace

TEST_CASE("every seam is played within seven days of both sides being learned") {
  const auto kind = FigureKind::seams;
  CHECK(figure_of(joined_on(8, 4, 5), kind).value().met);
  const QualityFigure late = figure_of(joined_on(9, 4, 5), kind).value();
  CHECK(late.figure == Approx(2.0 / 3));
  CHECK(late.why.at(0).bars == Bars{{4, 5}});
  // What comes before both are learned does not count, on the day itself it does.
  CHECK(figure_of(joined_on(1, 2, 3), kind).value().met);
  CHECK_FALSE(figure_of(joined_on(0, 2, 3), kind).value().met);
  // A run-through is not enough.
  Plan plan = joined_on(9, 4, 5);
  run_on(plan, {6});
  CHECK_FALSE(figure_of(plan, kind).value().met);
}

TEST_CASE("half of the seams are played within three days") {
  const auto kind = FigureKind::seams;
  CHECK(figure_of(joined_on(4, 5, 10), kind).value().met);  // 3, 3 and 7 days
  CHECK(lacks_of(joined_on(5, 5, 10), kind) == Lacks{Lack::seams_slow});
  CHECK(figure_of(joined_on(5, 5, 10), kind).value().wanted.at_least == 0.5);
}

TEST_CASE("a seam counts where it stands, and inside a return only at its source") {
  Plan plan = joined_on(4, 4, 4);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 24;
  piece.piece.sections.push_back({"A again", {17, 24}, {}, {}, BarRange{1, 8}});
  piece.sections.push_back({"A again", {17, 24}, BarRange{1, 8}});
  CHECK(figure_of(plan, FigureKind::seams).value().why.at(0).bars == Bars{{16, 17}});
  play(plan, 5, Drill::join, {16, 17});
  CHECK(figure_of(plan, FigureKind::seams).value().met);
}

TEST_CASE("every bar lies in a slow and in a counted pass, with 56 days left in two of each") {
  const auto kind = FigureKind::passes;
  Plan plan = learned_plan(55);
  play(plan, 10, Drill::slow_pass, {1, 16});
  play(plan, 11, Drill::counted_pass, {1, 12});
  const QualityFigure some = figure_of(plan, kind).value();
  CHECK(some.figure == 0.75);
  CHECK(lacks_of(plan, kind) == Lacks{Lack::no_counted_pass});
  CHECK(some.why[0].bars == Bars{{13, 16}});
  play(plan, 12, Drill::counted_pass, {9, 16});
  CHECK(figure_of(plan, kind).value().met);

  Plan longer = learned_plan(56);
  for (const int day : {10, 20}) play(longer, day, Drill::slow_pass, {1, 16});
  play(longer, 11, Drill::counted_pass, {1, 16});
  CHECK(lacks_of(longer, kind) == Lacks{Lack::one_counted_pass});
  play(longer, 21, Drill::counted_pass, {1, 16});
  CHECK(figure_of(longer, kind).value().met);
  CHECK_FALSE(figure_of(learned_plan(20), kind).has_value());
}

TEST_CASE("a pass counts for the bars where it stands, not for those that a return repeats") {
  Plan plan = learned_plan(30);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 24;
  piece.piece.sections.push_back({"A again", {17, 24}, {}, {}, BarRange{1, 8}});
  piece.sections.push_back({"A again", {17, 24}, BarRange{1, 8}});
  for (const Drill drill : {Drill::slow_pass, Drill::counted_pass}) play(plan, 10, drill, {1, 16});
  CHECK(figure_of(plan, FigureKind::passes).value().why.at(0).bars == Bars{{17, 24}});
}

namespace {

// Look-alikes that part at bars 3 and 11; starts from 1 and 9 drill both ways on.
Plan drilled_on(int days_left, const std::vector<int>& on, BarRange first = {1, 4}) {
  Plan plan = learned_plan(days_left);
  plan.pieces[0].piece.look_alikes = {{{{1, 4}, {9, 12}}, {3, 11}}};
  for (const int day : on) {
    Task task = sound::task(Drill::cue_starts, {1, 12}, {0, 2}, 2);
    task.fork = true;
    task.from_starts = {first, {9, 12}};
    put(plan, day, task);
  }
  return plan;
}

}  // namespace

TEST_CASE("each way on at a fork is drilled three times, farther and farther apart") {
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

TEST_CASE("with less than 28 days left a fork needs one drill in the last fortnight") {
  const auto kind = FigureKind::forks;
  CHECK(figure_of(drilled_on(27, {20}), kind).value().met);
  CHECK_FALSE(figure_of(drilled_on(28, {20}), kind).value().met);
  CHECK(lacks_of(drilled_on(27, {15}), kind) == Lacks{Lack::fork_early});
  CHECK(figure_of(drilled_on(27, {16}), kind).value().met);
  CHECK_FALSE(figure_of(drilled_on(20, {}), kind).has_value());
  CHECK_FALSE(figure_of(learned_plan(40), kind).has_value());  // no forks
}

TEST_CASE("a fork drill counts for the ways that its starts play past") {
  Plan plan = drilled_on(27, {20}, {1, 2});
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

TEST_CASE("spoken and written work takes a quarter of the minutes at most") {
  CHECK_FALSE(figure_of(proven(), kTemper).has_value());
  Plan plan = proven();
  speak(plan, 6, 0, 20);
  CHECK(figure_of(plan, kTemper).value().met);
  CHECK(figure_of(plan, kTemper).value().figure == 0.25);
  plan.days[6].tasks[0].minutes = 20.5;
  CHECK(lacks_of(plan, kTemper) == Lacks{Lack::temper_share});
}

TEST_CASE("the last seven days have no spoken and written work") {
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

TEST_CASE("the same bars are spoken or written at most twice in a week") {
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

TEST_CASE("bars are spoken or written after a slow or counted pass, the weakest first") {
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

TEST_CASE("spoken and written work stands in place of nothing") {
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

TEST_CASE("cue starts, passes and long recalls begin where phrases begin") {
  const auto kind = FigureKind::phrases;
  Plan plan = learned_plan(10);
  play(plan, 5, Drill::slow_pass, {5, 16});
  play(plan, 5, Drill::recall, {6, 12});  // not long
  CHECK(figure_of(plan, kind).value().met);
  Plan pass = plan;
  play(pass, 6, Drill::counted_pass, {6, 16});
  CHECK(figure_of(pass, kind).value().figure == 0.75);
  CHECK(lacks_of(pass, kind) == Lacks{Lack::pass_inside_phrase});
  Plan recall = plan;
  play(recall, 6, Drill::recall, {6, 13});
  CHECK(lacks_of(recall, kind) == Lacks{Lack::recall_inside_phrase});
  Plan cue = plan;
  cue.pieces[0].cues.push_back({3, 11, 1});
  CHECK(figure_of(cue, kind).value().why.at(0).bars == Bars{{11, 11}});
}

TEST_CASE("inside a phrase begin what is asked for, what leads into a fork, and what slips") {
  const auto kind = FigureKind::phrases;
  Plan plan = learned_plan(10);
  plan.pieces[0].cues.push_back({3, 11, 1});
  REQUIRE_FALSE(figure_of(plan, kind).value().met);
  Plan asked = plan;
  asked.pieces[0].piece.cues = {11};
  CHECK(figure_of(asked, kind).value().met);
  Plan fork = plan;
  fork.pieces[0].piece.look_alikes = {{{{1, 8}, {9, 16}}, {3, 11}}};
  CHECK(figure_of(fork, kind).value().met);
  fork.pieces[0].piece.look_alikes[0].forks[1] = 15;
  CHECK(figure_of(fork, kind).value().met);
  fork.pieces[0].piece.look_alikes[0].forks[1] = 16;  // more than a chunk before it
  CHECK_FALSE(figure_of(fork, kind).value().met);
  Plan slipped = plan;
  slipped.pieces[0].chunks[2].slips = {1, 4};
  CHECK(figure_of(slipped, kind).value().met);
  Plan unknown = plan;
  unknown.pieces[0].piece.sections[1].phrases.clear();
  CHECK(figure_of(unknown, kind).value().met);
}

TEST_CASE("a return has the phrases of its source, and bar 0 and bar 1 are one start") {
  const auto kind = FigureKind::phrases;
  Plan plan = learned_plan(10);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 24;
  piece.piece.sections.push_back({"A again", {17, 24}, {}, {}, BarRange{1, 8}});
  piece.sections.push_back({"A again", {17, 24}, BarRange{1, 8}});
  play(plan, 5, Drill::slow_pass, {21, 24});
  CHECK(figure_of(plan, kind).value().met);
  play(plan, 5, Drill::slow_pass, {22, 24});
  CHECK_FALSE(figure_of(plan, kind).value().met);

  Plan upbeat = learned_plan(10);
  PlannedPiece& with = upbeat.pieces[0];
  with.piece.pickup = 1;
  with.piece.sections[0].bars.first = with.piece.sections[0].phrases[0].first = 0;
  with.sections[0].bars.first = with.chunks[0].bars.first = 0;
  with.cues[0].bar = 0;
  play(upbeat, 5, Drill::slow_pass, {1, 8});
  CHECK(figure_of(upbeat, kind).value().met);
  with.cues.push_back({3, 1, 0});
  CHECK(lacks_of(upbeat, kind) == Lacks{Lack::pickup_twice});
}
