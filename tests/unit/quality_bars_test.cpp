// What is played of the piece: figures 5, 6, 7, 10.
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

TEST_CASE("each section is played whole within fourteen days of its last new bars", "[numbers]") {
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

TEST_CASE("a section counts with 21 days after its own last new bars", "[numbers]") {
  Plan plan = learned_plan(20);  // of A 22
  CHECK(figure_of(plan, kStretches).value().why.at(0).bars == Bars{{1, 8}});
  play(plan, 10, Drill::recall, {1, 8});
  CHECK(figure_of(plan, kStretches).value().met);
}

TEST_CASE("a short section is not asked to be played whole", "[numbers]") {
  Plan plan = with_sections(15, 30);
  plan.pieces[0].sections[1].bars.first = 10;
  CHECK(figure_of(plan, kStretches).value().met);
}

TEST_CASE("of a long section 32 bars at a time are enough", "[numbers]") {
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

TEST_CASE("each half of the piece is played whole before the first run-through", "[numbers]") {
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

TEST_CASE("every seam is played within seven days of both sides being learned", "[numbers]") {
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

TEST_CASE("half of the seams are played within three days", "[numbers]") {
  const auto kind = FigureKind::seams;
  CHECK(figure_of(joined_on(4, 5, 10), kind).value().met);  // 3, 3 and 7 days
  CHECK(lacks_of(joined_on(5, 5, 10), kind) == Lacks{Lack::seams_slow});
  CHECK(figure_of(joined_on(5, 5, 10), kind).value().wanted.at_least == 0.5);
}

TEST_CASE("a seam counts where it stands, and inside a return only at its source", "[numbers]") {
  Plan plan = joined_on(4, 4, 4);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 24;
  piece.piece.sections.push_back({"A again", {17, 24}, {}, {}, BarRange{1, 8}});
  piece.sections.push_back({"A again", {17, 24}, BarRange{1, 8}});
  CHECK(figure_of(plan, FigureKind::seams).value().why.at(0).bars == Bars{{16, 17}});
  play(plan, 5, Drill::join, {16, 17});
  CHECK(figure_of(plan, FigureKind::seams).value().met);
}

TEST_CASE("every bar lies in a slow and in a counted pass, with 56 days left in two of each",
          "[numbers]") {
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

TEST_CASE("a pass counts for the bars where it stands, not for those that a return repeats",
          "[numbers]") {
  Plan plan = learned_plan(30);
  PlannedPiece& piece = plan.pieces[0];
  piece.piece.bars = 24;
  piece.piece.sections.push_back({"A again", {17, 24}, {}, {}, BarRange{1, 8}});
  piece.sections.push_back({"A again", {17, 24}, BarRange{1, 8}});
  for (const Drill drill : {Drill::slow_pass, Drill::counted_pass}) play(plan, 10, drill, {1, 16});
  CHECK(figure_of(plan, FigureKind::passes).value().why.at(0).bars == Bars{{17, 24}});
}

TEST_CASE("cue starts, passes and long recalls begin where phrases begin", "[numbers]") {
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

TEST_CASE("inside a phrase begin what is asked for, what leads into a fork, and what slips",
          "[numbers]") {
  const auto kind = FigureKind::phrases;
  Plan plan = learned_plan(10);
  plan.pieces[0].cues.push_back({3, 11, 1});
  REQUIRE_FALSE(figure_of(plan, kind).value().met);
  Plan asked = plan;
  asked.pieces[0].piece.cues = {11};
  CHECK(figure_of(asked, kind).value().met);
  Plan fork = plan;
  const auto parts_at = [&](int second) {
    fork.pieces[0].piece.look_alikes = {{{{1, 8}, {9, 16}}, {3, second}}};
    fork.pieces[0].forks = forks_of(fork.pieces[0].piece);
  };
  parts_at(11);
  CHECK(figure_of(fork, kind).value().met);
  parts_at(15);
  CHECK(figure_of(fork, kind).value().met);
  parts_at(16);  // more than a chunk before it
  CHECK_FALSE(figure_of(fork, kind).value().met);
  Plan slipped = plan;
  slipped.pieces[0].chunks[2].slips = {1, 4};
  CHECK(figure_of(slipped, kind).value().met);
  Plan first = learned_plan(10);
  first.pieces[0].cues.push_back({3, 2, 0});
  REQUIRE_FALSE(figure_of(first, kind).value().met);
  first.pieces[0].chunks[0].slips = {1, 4};
  CHECK(figure_of(first, kind).value().met);
  Plan unknown = plan;
  unknown.pieces[0].piece.sections[1].phrases.clear();
  CHECK(figure_of(unknown, kind).value().met);
}

TEST_CASE("a return has the phrases of its source, and bar 0 and bar 1 are one start",
          "[numbers]") {
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
  with.cues.erase(with.cues.begin());  // bar 1 alone is the start
  CHECK(lacks_of(upbeat, kind).empty());
}
