// Whatever the piece and the calendar, a plan keeps the rules and says what it leaves out.

#include "catch.h"
#include "long_checks.h"
#include "piece_file.h"
#include "plan/chunks/analyse.h"
#include "plan/cue_reach.h"
#include "plan/search/lower_bound.h"
#include "random_case.h"
#include "report/plan_json.h"
#include "sample_plan.h"

namespace cahier {
namespace {

constexpr int kShards = 6;  // test cases, that they may run side by side
const int kPlans = sample::in_long_checks() ? 400 : 70;  // in each shard

int runs_in(const Plan& plan, int piece) {
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.piece == piece && task.drill == Drill::run_through) runs += task.steps[0].times;
  return runs;
}

int unplaced_in(const Plan& plan, int piece, Drill drill) {
  return static_cast<int>(std::count_if(
      plan.unplaced.begin(), plan.unplaced.end(),
      [&](const Unplaced& work) { return work.piece == piece && work.drill == drill; }));
}

// What a plan that does not fit leaves out without naming it. The checker lets such a plan off its
// rules of joins, recalls and forks; here they are asked of what is learned all the same.
std::string left_out_in_silence(const Plan& plan) {
  std::string text;
  Plan as_if_it_fitted = plan;
  as_if_it_fitted.fits = true;
  for (const Violation& violation : violations(as_if_it_fitted)) {
    const bool named =
        violation.kind == Violation::Kind::fits_and_unplaced ||
        std::any_of(plan.unplaced.begin(), plan.unplaced.end(), [&](const Unplaced& work) {
          return (violation.rule == 4 && work.drill == Drill::join) ||
                 (violation.rule == 5 && work.drill == Drill::recall) ||
                 (violation.rule == 8 && work.drill == Drill::cue_starts);
        });
    if (!named) text += "rule " + std::to_string(violation.rule) + ": " + violation.what + "\n";
  }
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
    if (runs_in(plan, piece) + unplaced_in(plan, piece, Drill::run_through) < plan.runs_required())
      text += "run-throughs of piece " + std::to_string(piece) + " are neither placed nor named\n";
  return text;
}

}  // namespace

TEST_CASE("random pieces are such as a file can hold") {
  int returns = 0;
  int groups = 0;
  for (unsigned seed = 0; seed < 1000; ++seed) {
    sample::RandomWork random(seed);
    const Piece piece = random.piece(60);
    const std::string file = sample::piece_file(piece);
    INFO("seed " << seed << "\n" << file);
    Diagnostics diagnostics;
    const auto read = read_piece(Source("random.yaml", file), diagnostics);
    for (const Diagnostic& diagnostic : diagnostics.all()) UNSCOPED_INFO(compose(diagnostic));
    REQUIRE(read.has_value());
    REQUIRE(sample::piece_file(*read) == file);
    groups += static_cast<int>(piece.look_alikes.size());
    for (const Section& section : piece.sections)
      if (section.same_as && piece.learned_bar(section.bars.first) != section.same_as->first)
        ++returns;
  }
  CHECK(returns >= 100);  // of what is a return itself
  CHECK(groups >= 200);
}

TEST_CASE("what counts as played from a start is no more than the sheets ask for") {
  int inside = 0;
  int to_the_same_bar = 0;
  int starts = 0;
  for (unsigned seed = 0; seed < 500; ++seed) {
    sample::RandomWork random(seed);
    const Piece piece = random.piece(60);
    const Analysis analysis = analyse(piece, sample::steady(), sample::steady().chunk_minutes);
    for (const CueStart& cue : analysis.planned.cues) {
      CAPTURE(seed, cue.bar);
      const BarRange& played = analysis.starts[cue.number - 1].bars;
      const int asked = last_bar_from(analysis.planned, cue);
      REQUIRE(played.first == cue.bar);
      REQUIRE(played.last <= asked);
      to_the_same_bar += played.last == asked ? 1 : 0;
      inside += analysis.passages[analysis.passage_at(cue.bar)].bars.first < cue.bar ? 1 : 0;
      ++starts;
    }
  }
  CHECK(inside > starts / 10);
  // Returns of returns are cut up more finely than the sheets know.
  CHECK(to_the_same_bar > starts * 99 / 100);
}

TEMPLATE_TEST_CASE_SIG("every plan of random pieces and calendars passes the checker", "",
                       ((int shard), shard), 0, 1, 2, 3, 4, 5) {
  int plans = 0;
  int fitting = 0;
  for (int number = 0; number < kPlans; ++number) {
    const unsigned seed = static_cast<unsigned>(number * kShards + shard);
    const sample::RandomCase random = sample::random_case(seed);
    if (!random.any_practice_day()) continue;
    const Plan plan = make_plan(random.pieces, random.terms);
    INFO("seed " << seed);
    REQUIRE(sample::faults_of(plan) == "");
    REQUIRE(plan.fits == plan.unplaced.empty());
    if (plan.fits) {
      REQUIRE(could_fit(random.pieces, random.terms));
    } else {
      REQUIRE(left_out_in_silence(plan) == "");
    }
    if (number % 20 == 0)
      REQUIRE(plan_json(make_plan(random.pieces, random.terms)) == plan_json(plan));
    ++plans;
    fitting += plan.fits ? 1 : 0;
  }
  // A property of plans that never fit, or of plans that always do, would be no property at all.
  CHECK(fitting > plans / 3);
  CHECK(fitting < plans * 19 / 20);
}

}  // namespace cahier
