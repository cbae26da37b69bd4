#include "plan/search/sensitivity.h"

#include "catch.h"
#include "practice/time_model.h"
#include "sample_plan.h"

namespace cahier {
namespace {

struct Work {
  std::vector<Piece> pieces;
  Terms terms;

  Work(const std::string& yaml, const std::string& by)
      : pieces({sample::piece(yaml)}),
        terms(settle(sample::date("2027-01-04"), sample::date(by), pieces.front().practice,
                     sample::steady())) {}

  Plan plan(double learning, int days_late) const {
    Terms longer = terms;
    longer.method.learn_factor = learning;
    longer.by += days{days_late};
    return make_plan(pieces, longer);
  }
};

// 25 and 50 % longer: on time both, one late, both late, and never.
const std::vector<Work>& works() {
  static const std::vector<Work> all = {
      {"title: A\nbars: 32\ntempo: 96\n", "2027-03-20"},
      {"title: B\nbars: 96\ntempo: 96\nlevel: 4\n", "2027-02-12"},
      {"title: C\nbars: 96\ntempo: 96\nlevel: 5\npractice: {minutes: 20}\n", "2027-02-20"},
      {"title: D\nbars: 16\ntempo: 60\nlevel: 5\n", "2027-08-20"}};
  return all;
}

}  // namespace

TEST_CASE("the days late are the fewest that fit when learning takes longer") {
  int on_time = 0;
  int late = 0;
  int never = 0;
  for (const Work& work : works()) {
    REQUIRE(work.plan(1, 0).fits);
    const std::vector<Sensitivity> found = sensitivity(work.pieces, work.terms);
    REQUIRE(found.size() == 2);
    CHECK(found[0].learning == 1.25);
    CHECK(found[1].learning == 1.5);
    for (const Sensitivity& one : found) {
      INFO(work.pieces[0].title << ", " << one.learning << ": " << one.days_late.value_or(-1));
      ++(!one.days_late ? never : *one.days_late == 0 ? on_time : late);
      CHECK(work.plan(one.learning, one.days_late.value_or(366)).fits == one.days_late.has_value());
      for (int fewer = 0; fewer < one.days_late.value_or(0); ++fewer)
        CHECK_FALSE(work.plan(one.learning, fewer).fits);
    }
  }
  CHECK(on_time >= 2);
  CHECK(late >= 2);
  CHECK(never >= 1);
}

TEST_CASE("when learning takes longer the chunks stay the same, and so does all but learning") {
  const Work& work = works()[0];
  const Plan usual = work.plan(1, 0);
  const Plan longer = work.plan(1.5, 0);
  REQUIRE(usual.pieces[0].chunks.size() == longer.pieces[0].chunks.size());
  for (std::size_t i = 0; i < usual.pieces[0].chunks.size(); ++i)
    CHECK(usual.pieces[0].chunks[i].bars == longer.pieces[0].chunks[i].bars);
  const TimeModel time(work.pieces[0], usual.method);
  const TimeModel slow(work.pieces[0], longer.method);
  // Rounded up to half a minute.
  CHECK(slow.learn({1, 4}, 2) >= 1.5 * time.learn({1, 4}, 2) - 0.75);
  CHECK(slow.learn({1, 4}, 2) <= 1.5 * time.learn({1, 4}, 2) + 0.5);
  CHECK(slow.recall({1, 4}, 2) == time.recall({1, 4}, 2));
  CHECK(slow.run_through() == time.run_through());
}

}  // namespace cahier
