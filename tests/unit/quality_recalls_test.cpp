// How what is learned comes back, how fast, and in which order: figures 14, 15, 16, 19.
#include "catch.h"
#include "quality_plan.h"

using namespace cahier;
using namespace cahier::sample;

namespace {

using Lacks = std::vector<Lack>;
using Bars = std::vector<BarRange>;

}  // namespace

TEST_CASE("hard bars come back in at most three quarters of the days of easy ones", "[numbers]") {
  const auto kind = FigureKind::hard_bars;
  const auto recalled = [](int easy, int hard, int level) {
    Plan plan = learned_plan(60);
    plan.pieces[0].chunks[3].level = level;
    for (const int day : {5, 5 + easy}) play(plan, day, Drill::recall, {1, 12});
    for (const int day : {5, 5 + hard}) play(plan, day, Drill::recall, {13, 16});
    return plan;
  };
  CHECK(figure_of(recalled(12, 9, 4), kind).value().figure == 0.75);
  CHECK(figure_of(recalled(12, 9, 5), kind).value().met);
  CHECK(lacks_of(recalled(12, 10, 4), kind) == Lacks{Lack::hard_bars_rest});
  CHECK_FALSE(figure_of(recalled(12, 10, 3), kind).has_value());
  Plan none_easy = recalled(12, 9, 4);
  for (Chunk& chunk : none_easy.pieces[0].chunks) chunk.level = std::max(3, chunk.level);
  CHECK_FALSE(figure_of(none_easy, kind).has_value());
}

namespace {

const auto kTempo = FigureKind::tempo;

// Learned at 50 of 100, first recalled at a tempo, and both sections twice near tempo.
Plan at_tempo(double first_recall, std::vector<double> more = {72, 90, 90}) {
  Plan plan = learned_plan(40);
  for (Day& day : plan.days)
    for (Task& task : day.tasks) task.tempo = 50;
  int day = 5;
  more.insert(more.begin(), first_recall);
  for (const double tempo : more) {
    play(plan, day, Drill::recall, {1, 16});
    plan.days[day++].tasks.back().tempo = tempo;
  }
  run_on(plan, {20});
  return plan;
}

}  // namespace

TEST_CASE("the first recall is at most a tenth faster than learning was", "[numbers]") {
  CHECK(figure_of(at_tempo(55), kTempo).value().met);
  CHECK(lacks_of(at_tempo(56), kTempo) == Lacks{Lack::first_recall_fast});
  CHECK(figure_of(at_tempo(56), kTempo).value().figure == Approx(1.12));
}

TEST_CASE("the tempo rises by steps", "[numbers]") {
  CHECK(figure_of(at_tempo(52), kTempo).value().met);  // 20 at most
  CHECK(lacks_of(at_tempo(51), kTempo) == Lacks{Lack::tempo_leaps});
  CHECK(figure_of(at_tempo(52, {63, 83, 92, 92}), kTempo).value().met);
}

TEST_CASE("every section is at nine tenths of its tempo twice before the first run-through",
          "[numbers]") {
  CHECK(lacks_of(at_tempo(55, {72, 90}), kTempo) == Lacks{Lack::never_near_tempo});
  // 88 is the mark of a metronome below nine tenths of 100.
  CHECK(figure_of(at_tempo(55, {72, 88, 88}), kTempo).value().met);
  CHECK(lacks_of(at_tempo(55, {72, 88, 84}), kTempo) == Lacks{Lack::never_near_tempo});
  Plan late = at_tempo(55);
  late.days[20].tasks.clear();
  run_on(late, {8});  // the day of the second recall at 90
  CHECK(figure_of(late, kTempo).value().why.at(0).bars == Bars{{1, 8}, {9, 16}});
  late.days[8].tasks.pop_back();
  run_on(late, {9});
  CHECK(figure_of(late, kTempo).value().met);
}

TEST_CASE("each task has the tempo of its place", "[numbers]") {
  Plan plan = at_tempo(55);
  plan.pieces[0].piece.changes = {{9, {}, {}, Tempo{100, Beat::quarter}}};
  CHECK(figure_of(plan, kTempo).value().met);
  plan.pieces[0].piece.changes[0].tempo->per_minute = 99;
  const QualityFigure figure = figure_of(plan, kTempo).value();
  CHECK(lacks_of(plan, kTempo) == Lacks{Lack::one_tempo});
  CHECK(figure.figure == Approx(4.0 / 9));  // four chunks learned, of nine tasks
  const auto name = [&](double share) {
    for (Day& day : plan.days)
      for (Task& task : day.tasks)
        if (task.bars == BarRange{1, 16}) task.tempi = {{1, *task.tempo}, {9, *task.tempo * share}};
  };
  name(0.99);
  CHECK(figure_of(plan, kTempo).value().met);
  name(0.92);  // two marks, each rounded down
  CHECK(figure_of(plan, kTempo).value().met);
  name(0.85);  // more than a mark's difference
  CHECK(lacks_of(plan, kTempo) == Lacks{Lack::one_tempo});
}

TEST_CASE("the unit of the beat stays the same from row to row", "[numbers]") {
  Plan plan = at_tempo(55);
  play(plan, 15, Drill::slow_pass, {1, 8});
  play(plan, 15, Drill::slow_pass, {9, 16});
  CHECK(figure_of(plan, kTempo).value().met);
  plan.days[15].tasks[1].beat = Beat::half;
  CHECK(lacks_of(plan, kTempo) == Lacks{Lack::beats_mixed});
  plan.days[16].tasks = {plan.days[15].tasks[1]};
  plan.days[15].tasks.pop_back();
  CHECK(figure_of(plan, kTempo).value().met);
}

TEST_CASE("new bars go forward within a phrase", "[numbers]") {
  const auto kind = FigureKind::order;
  const auto learned_in = [](std::vector<int> on) {
    Plan plan = empty_plan(40);
    plan.pieces[0].piece.sections[0].phrases = {{1, 8}};
    const auto& chunks = plan.pieces[0].chunks;
    for (int chunk = 0; chunk < 4; ++chunk)
      put(plan, on[chunk], sound::learn(chunks[chunk].bars, chunk));
    return plan;
  };
  CHECK(figure_of(learned_in({0, 1, 3, 2}), kind).value().met);  // phrases of their own
  CHECK(figure_of(learned_in({2, 3, 0, 1}), kind).value().met);
  Plan back = learned_in({1, 0, 2, 3});
  CHECK(figure_of(back, kind).value().figure == 0.75);
  CHECK(figure_of(back, kind).value().why.at(0).bars == Bars{{5, 8}});
  Plan said = back;
  said.days[0].tasks[0].reason = Reason::slips;
  CHECK(figure_of(said, kind).value().met);
  back.order = Order::backward;
  CHECK_FALSE(figure_of(back, kind).has_value());
}

TEST_CASE("in a programme the piece changes at most three times a day", "[numbers]") {
  const auto kind = FigureKind::order;
  Plan plan = learned_plan(40);
  plan.pieces.push_back(plan.pieces[0]);
  for (const int piece : {0, 1, 0, 1}) {
    play(plan, 10, Drill::recall, {1, 4});
    plan.days[10].tasks.back().piece = piece;
  }
  CHECK(figure_of(plan, kind).value().met);
  play(plan, 10, Drill::recall, {1, 4});
  CHECK(lacks_of(plan, kind) == Lacks{Lack::pieces_mixed});
  CHECK(figure_of(plan, kind).value().figure == 4);
}

namespace {

const auto kSpacing = FigureKind::spacing;

// A best gap of four days whatever the days left, and all chunks recalled on the days given.
Plan recalled_on(const std::vector<int>& on, int length = 30) {
  Plan plan = learned_plan(length);
  plan.method.spacing = {{7, 4}, {97, 4}};
  for (const int day : on) play(plan, day, Drill::recall, {1, 16});
  return plan;
}

}  // namespace

TEST_CASE("gaps are near the best within half to twice of it", "[numbers]") {
  // The date is day 33.
  CHECK(figure_of(recalled_on({5, 7, 15, 19, 23, 27, 31}), kSpacing).value().met);
  const QualityFigure long_gap = figure_of(recalled_on({5, 9, 18, 22, 26, 30}), kSpacing).value();
  CHECK_FALSE(long_gap.met);
  CHECK(lacks_of(recalled_on({5, 9, 18, 22, 26, 30}), kSpacing) ==
        Lacks{Lack::gap_too_long, Lack::gaps_off});
  // To the date as well.
  CHECK(figure_of(recalled_on({5, 9, 17, 25}), kSpacing).value().met);
  CHECK(lacks_of(recalled_on({5, 9, 16, 24}), kSpacing) == Lacks{Lack::gap_too_long});
}

TEST_CASE("what is played more often never counts against the gaps", "[numbers]") {
  std::vector<int> daily;
  for (int day = 5; day < 33; ++day) daily.push_back(day);
  CHECK(figure_of(recalled_on(daily), kSpacing).value().figure == 1);
  CHECK(figure_of(recalled_on({5, 6, 9, 10, 13, 17, 18, 21, 25, 29}), kSpacing).value().met);
  // Where only the first two are close, the second can be left aside; not where no third is near.
  const QualityFigure close = figure_of(recalled_on({5, 6, 14, 22, 30}), kSpacing).value();
  CHECK(close.figure == 0.75);
  CHECK(lacks_of(recalled_on({5, 6, 14, 22, 30}), kSpacing) == Lacks{Lack::gaps_off});
}

TEST_CASE("nineteen of twenty gaps near the best are enough", "[numbers]") {
  // The first of 20 gaps of each chunk is a single day, and cannot be left aside.
  std::vector<int> on = {5, 6};
  while (on.size() < 21) on.push_back(on.back() + 8);
  CHECK(figure_of(recalled_on(on, on.back() + 2), kSpacing).value().figure == 0.95);
  CHECK(figure_of(recalled_on(on, on.back() + 2), kSpacing).value().met);
  on.pop_back();
  CHECK_FALSE(figure_of(recalled_on(on, on.back() + 2), kSpacing).value().met);
}

TEST_CASE("a gap that days off alone make too long counts neither way", "[numbers]") {
  Plan plan = recalled_on({5, 9, 18, 22, 26, 30});
  for (int day = 10; day < 18; ++day) plan.days[day].allowance = 0;
  CHECK(figure_of(plan, kSpacing).value().met);
  plan.days[17].allowance = 5;
  CHECK_FALSE(figure_of(plan, kSpacing).value().met);
}
