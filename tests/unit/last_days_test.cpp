// Rule 11: where everything is learned and a day to practise is left, there is a plan, and it says
// what it leaves out.

#include "catch.h"
#include "plan/quality/gave_way.h"
#include "plan/search/planner.h"
#include "random_work.h"
#include "sample_plan.h"

namespace cahier {
namespace {

// Every bar was learned three weeks ago, and recalled `since` days ago.
Terms all_learned(const Piece& piece, int days_left, double minutes, int since) {
  const Date from = sample::date("2027-03-01");
  Wishes wishes;
  wishes.minutes.emplace();
  wishes.minutes->fill(minutes);
  Terms terms = settle(from, from + days{days_left}, wishes, sample::steady());
  for (const auto& [drill, ago] : {std::pair{Drill::learn, 21}, std::pair{Drill::recall, since}}) {
    Done done;
    done.date = from - days{ago};
    done.drill = drill;
    done.bars = piece.whole();
    done.slips.emplace();
    terms.record.done.push_back(done);
  }
  terms.record.edition = 2;
  return terms;
}

bool gives_up(const Plan& plan, GaveWay kind) {
  return std::find(plan.gave_way.begin(), plan.gave_way.end(), kind) != plan.gave_way.end();
}

int runs_in(const Plan& plan) {
  int runs = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) runs += task.steps.front().times;
  return runs;
}

}  // namespace

TEST_CASE("rule 11: with everything learned there is a plan for whatever days are left") {
  for (unsigned seed = 0; seed < 60; ++seed) {
    sample::RandomWork random(seed);
    const Piece piece = random.piece(60);
    const int days_left = random.number(1, 12);
    const int since = random.number(1, 20);
    const Terms terms = all_learned(piece, days_left, random.number(5, 30), since);
    const Plan plan = make_plan({piece}, terms);
    INFO("seed " << seed << ", " << days_left << " days, recalled " << since << " days ago");
    REQUIRE(sample::faults_of(plan) == "");
    REQUIRE(plan.fits);
    if (runs_in(plan) < plan.runs_required()) CHECK(gives_up(plan, GaveWay::run_throughs));
  }
}

TEST_CASE("rule 11: one day is left, and the piece is played through once") {
  const Piece piece = sample::piece("title: Eve\nbars: 16\nmeter: 4/4\ntempo: 120\n");
  const Plan plan = make_plan({piece}, all_learned(piece, 1, 15, 2));
  REQUIRE(plan.fits);
  CHECK(runs_in(plan) == 1);
  CHECK(gives_up(plan, GaveWay::run_throughs));
}

TEST_CASE("rule 11: what is not said to give way is a violation all the same") {
  const Piece piece = sample::piece("title: Eve\nbars: 16\nmeter: 4/4\ntempo: 120\n");
  Plan plan = make_plan({piece}, all_learned(piece, 2, 15, 2));
  REQUIRE(sample::faults_of(plan) == "");
  plan.let_go.clear();
  CHECK(sample::faults_of(plan).find("run-throughs instead of 5") != std::string::npos);
}

TEST_CASE("rule 11 asks that everything is learned, and for a day to practise") {
  const Piece piece = sample::piece("title: Eve\nbars: 16\nmeter: 4/4\ntempo: 120\n");
  Terms terms = all_learned(piece, 2, 15, 2);
  for (Done& done : terms.record.done) done.bars.last = 12;
  CHECK_FALSE(make_plan({piece}, terms).fits);
  CHECK_FALSE(make_plan({piece}, all_learned(piece, 2, 0, 2)).fits);
}

}  // namespace cahier
