// How the days are filled: what a player at the instrument would mind.

#include "catch.h"
#include "paths.h"
#include "piece/read_piece.h"
#include "plan/schedule/day_order.h"
#include "plan/spacing_report.h"
#include "sample_plan.h"

namespace cahier {
namespace {

Piece example(const std::string& name) {
  Diagnostics diagnostics;
  const auto piece =
      read_piece(Source::from_file(std::string(EXAMPLES) + "/" + name + ".yaml"), diagnostics);
  REQUIRE(piece.has_value());
  return *piece;
}

// The examples, in every order of learning, over eleven weeks.
std::vector<Plan> example_plans(const std::string& by = "2027-03-20") {
  std::vector<Plan> plans;
  for (const char* name : {"lantern-study", "winter-fantasy", "chapel-toccata"})
    for (const Order order : {Order::forward, Order::backward, Order::hardest_first}) {
      const std::vector<Piece> pieces = {example(name)};
      Terms terms = settle(sample::date("2027-01-04"), sample::date(by), pieces[0].practice,
                           sample::steady());
      terms.order = order;
      plans.push_back(make_plan(pieces, terms));
      REQUIRE(plans.back().fits);
      REQUIRE(sample::faults_of(plans.back()) == "");
    }
  return plans;
}

int level_of(const Plan& plan, const Task& task) {
  int level = 0;
  for (const int chunk : task.chunks)
    level = std::max(level, plan.pieces[task.piece].chunks[chunk].level);
  return level;
}

}  // namespace

TEST_CASE("days hold no crumbs") {
  for (const Plan& plan : example_plans()) {
    int crumbs = 0;
    int days_with_work = 0;
    for (const Day& day : plan.days) {
      days_with_work += day.tasks.empty() ? 0 : 1;
      crumbs += !day.tasks.empty() && day.minutes() < 2 ? 1 : 0;
    }
    INFO(plan.pieces[0].piece.title << ": " << crumbs << " of " << days_with_work);
    // At the very beginning there is one chunk to recall and nothing to put beside it.
    CHECK(crumbs <= 2);
  }
}

TEST_CASE("turns on the same passage hardly ever follow each other") {
  for (const Plan& plan : example_plans()) {
    int pairs = 0;
    int together = 0;
    for (const Day& day : plan.days)
      for (std::size_t at = 1; at < day.tasks.size(); ++at) {
        ++pairs;
        together += same_passage(day.tasks[at - 1], day.tasks[at]) ? 1 : 0;
      }
    INFO(plan.pieces[0].piece.title << ": " << together << " of " << pairs);
    // A few cannot stand apart: halves that share a return, a join and a start in one section.
    CHECK(together * 11 <= pairs);
  }
}

TEST_CASE("what is new comes after what is cold, the hardest of it first") {
  for (const Plan& plan : example_plans())
    for (const Day& day : plan.days) {
      bool fresh = false;
      int before = 6;
      for (const Task& task : day.tasks) {
        if (task.drill == Drill::learn) {
          fresh = true;
          CHECK(level_of(plan, task) <= before);
          before = level_of(plan, task);
        }
        const bool cold = task.drill == Drill::recall || task.drill == Drill::slow_pass ||
                          task.drill == Drill::counted_pass;
        CHECK_FALSE((fresh && cold));
      }
    }
}

TEST_CASE("a week with four practice days or more has one to catch up, and it is marked") {
  for (const Plan& plan : example_plans()) {
    // All whole weeks but those of the last ten days; the week in which the last bar is learned
    // may need all its days, and so may two of the first, where there is one chunk for each.
    int weeks = 0;
    int marked = 0;
    for (std::size_t first = 0; first + 7 + 10 < plan.days.size(); first += 7) {
      ++weeks;
      for (std::size_t at = first; at < first + 7; ++at)
        if (plan.days[at].note == DayNote::catch_up) {
          ++marked;
          for (const Task& task : plan.days[at].tasks) CHECK(task.drill != Drill::learn);
        }
    }
    INFO(plan.pieces[0].piece.title << ": " << marked << " of " << weeks);
    CHECK(marked >= weeks - 3);
    CHECK(marked <= weeks);
  }
}

TEST_CASE("the last day before the date is a light one") {
  for (const Plan& plan : example_plans()) {
    const Day& last = plan.days.back();
    CHECK_FALSE(last.tasks.empty());
    CHECK(last.minutes() <= last.allowance / 2);
  }
}

TEST_CASE("a run-through that is long for a day does not stand on the last one") {
  const Plan plan = sample::plan(
      "title: Long\nbars: 120\nmeter: 4/4\ntempo: 60\nlevel: 1\npractice: {minutes: 15}\n",
      "2027-01-04", "2027-06-20");
  REQUIRE(plan.fits);
  CHECK(plan.days.back().minutes() <= 7.5);
  for (const Task& task : plan.days.back().tasks) CHECK(task.drill != Drill::run_through);
}

TEST_CASE("the first break of a long day comes in its first half, and no sitting is too long") {
  const Plan plan = sample::plan(
      "title: Much\nbars: 160\nmeter: 4/4\ntempo: 100\nlevel: 4\npractice: {minutes: 90}\n",
      "2027-01-04", "2027-02-03");
  REQUIRE(plan.fits);
  int long_days = 0;
  for (const Day& day : plan.days) {
    // Five minutes in every half-hour: performing-arts medicine charity guidance.
    if (day.minutes() <= plan.method.break_after) continue;
    ++long_days;
    std::vector<double> sittings(1, 0);
    for (const Task& task : day.tasks) {
      if (task.block == static_cast<int>(sittings.size())) sittings.push_back(0);
      REQUIRE(task.block + 1 == static_cast<int>(sittings.size()));
      sittings.back() += task.minutes;
    }
    REQUIRE(sittings.size() >= 2);
    CHECK(sittings[0] <= std::max(day.minutes() / 2, day.tasks[0].minutes));
    for (const double sitting : sittings) CHECK(sitting <= plan.method.break_after + 10);
  }
  CHECK(long_days >= 5);
}

TEST_CASE("recalls keep near the best gaps in every example and order") {
  for (const char* by : {"2027-02-20", "2027-03-20", "2027-06-20"})
    for (const Plan& plan : example_plans(by)) {
      INFO(plan.pieces[0].piece.title << ", " << by);
      CHECK(spacing_report(plan).near_share() >= 0.95);
    }
}

}  // namespace cahier
