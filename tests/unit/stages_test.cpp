// Build, Prove and Temper in their time.

#include "catch.h"
#include "piece/read_piece.h"
#include "sample_plan.h"

namespace cahier {
namespace {

constexpr auto kFourSections =
    "title: Four\nmeter: 4/4\ntempo: 100\nlevel: 3\nsections:\n"
    "  - {name: A, bars: 1-12, level: 2}\n  - {name: B, bars: 13-36}\n"
    "  - {name: C, bars: 37-48, level: 5}\n  - {name: D, bars: 49-60}\n";

Plan plan_in(Order order) {
  const std::vector<Piece> pieces = {sample::piece(kFourSections)};
  Terms terms = settle(sample::date("2027-01-04"), sample::date("2027-04-20"), pieces[0].practice,
                       sample::steady());
  terms.order = order;
  const Plan plan = make_plan(pieces, terms);
  REQUIRE(plan.fits);
  REQUIRE(sample::faults_of(plan) == "");
  return plan;
}

// Day indices of tasks that `wanted` names.
template <typename Wanted>
std::vector<int> days_of(const Plan& plan, Wanted wanted) {
  std::vector<int> found;
  for (int day = 0; day < static_cast<int>(plan.days.size()); ++day)
    for (const Task& task : plan.days[day].tasks)
      if (wanted(task)) found.push_back(day);
  return found;
}

std::vector<int> days_of(const Plan& plan, Drill drill) {
  return days_of(plan, [&](const Task& task) { return task.drill == drill; });
}

std::string sections_as_learned(const Plan& plan) {
  std::string names;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::learn) {
        const std::string& name =
            plan.pieces[0].sections[plan.pieces[0].chunks[task.chunks[0]].section].name;
        if (names.empty() || names.back() != name[0]) names += name;
      }
  return names;
}

}  // namespace

TEST_CASE("sections are learned forward, backward or hardest first") {
  CHECK(sections_as_learned(plan_in(Order::forward)) == "ABCD");
  CHECK(sections_as_learned(plan_in(Order::backward)) == "DCBA");
  CHECK(sections_as_learned(plan_in(Order::hardest_first)) == "CBDA");
}

TEST_CASE("Prove begins with a section as soon as it is learned") {
  for (const Order order : {Order::forward, Order::backward, Order::hardest_first}) {
    const Plan plan = plan_in(order);
    const int last_new = days_of(plan, Drill::learn).back();
    CHECK(days_of(plan, Drill::cue_starts).front() < last_new);
    CHECK(days_of(plan, [](const Task& task) {
            return stage_of(task.drill) == Stage::prove;
          }).front() < last_new * 3 / 4);
  }
}

TEST_CASE("sections, then halves, then the whole: each without stopping, and in that order") {
  for (const Order order : {Order::forward, Order::backward, Order::hardest_first}) {
    const Plan plan = plan_in(order);
    const auto halves = days_of(plan, [](const Task& task) { return task.reason == Reason::half; });
    const auto sections =
        days_of(plan, [](const Task& task) { return task.reason == Reason::section; });
    REQUIRE(halves.size() == 2);
    REQUIRE(sections.size() >= 3);  // soon after each is learned
    CHECK(days_of(plan, Drill::learn).back() > sections.front());
    CHECK(sections.front() < halves.front());
    CHECK(halves.back() < days_of(plan, Drill::run_through).front());
  }
}

TEST_CASE("the halves meet at the section start nearest to the middle") {
  const Plan plan = plan_in(Order::forward);
  std::vector<BarRange> halves;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.reason == Reason::half) halves.push_back(task.bars);
  CHECK(halves == std::vector<BarRange>{{1, 36}, {37, 60}});
}

TEST_CASE("a run-through is recorded, and for three of the later ones somebody listens") {
  std::vector<Reason> reasons;
  const Plan plan = plan_in(Order::forward);
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) reasons.push_back(task.reason);
  CHECK(reasons == std::vector<Reason>{Reason::whole, Reason::whole, Reason::recorded,
                                       Reason::listener, Reason::listener, Reason::listener,
                                       Reason::whole});
}

TEST_CASE("the last days hold cue starts and run-throughs only") {
  for (const Order order : {Order::forward, Order::backward, Order::hardest_first}) {
    const Plan plan = plan_in(order);
    for (std::size_t day = plan.days.size() - plan.method.quiet_days; day < plan.days.size(); ++day)
      for (const Task& task : plan.days[day].tasks)
        CHECK((task.drill == Drill::cue_starts || task.drill == Drill::run_through));
  }
}

TEST_CASE("a short piece has no halves") {
  const Plan plan = sample::plan("title: One\nbars: 15\nsections: [{name: A, bars: 1-15}]\n");
  CHECK(days_of(plan, [](const Task& task) { return task.reason == Reason::half; }).empty());
}

}  // namespace cahier
