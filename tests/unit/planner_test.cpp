#include "plan/search/planner.h"

#include "catch.h"
#include "report/plan_json.h"
#include "sample_plan.h"

namespace cahier {
namespace {

constexpr auto kFiveLines =
    "title: Small Serenade\nbars: 32\nmeter: 3/4\ntempo: 112\nkey: G major\n";

int count(const Plan& plan, Drill drill) {
  int found = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) found += task.drill == drill ? 1 : 0;
  return found;
}

}  // namespace

TEST_CASE("five lines give a plan that fits and keeps every rule") {
  const Plan plan = sample::plan(kFiveLines);
  CHECK(plan.fits);
  CHECK(plan.days.size() == 75);
  CHECK(count(plan, Drill::learn) == 8);
  CHECK(count(plan, Drill::run_through) >= 5);
  CHECK(count(plan, Drill::slow_pass) >= 2);
  CHECK(count(plan, Drill::counted_pass) >= 2);
  CHECK(count(plan, Drill::cue_starts) >= 5);
}

TEST_CASE("the same work is planned the same way twice") {
  CHECK(plan_json(sample::plan(kFiveLines)) == plan_json(sample::plan(kFiveLines)));
}

TEST_CASE("a return is not learned a second time, and is joined on both sides") {
  const Plan plan = sample::plan(
      "title: Round\nmeter: 4/4\nsections:\n  - {name: A, bars: 1-8}\n  - {name: B, bars: 9-16}\n"
      "  - {name: A again, bars: 17-24, same as: 1-8}\n  - {name: End, bars: 25-28}\n");
  REQUIRE(plan.fits);
  bool into = false;
  bool out = false;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (task.drill == Drill::learn) CHECK_FALSE(task.bars.overlaps({17, 24}));
      if (task.drill == Drill::join) {
        into = into || (task.bars.contains(16) && task.bars.contains(17));
        out = out || (task.bars.contains(24) && task.bars.contains(25));
      }
    }
  CHECK(into);
  CHECK(out);
}

TEST_CASE("a run-through longer than any day has its day to itself, and the day says so") {
  const Plan plan = sample::plan(
      "title: Long\nbars: 200\nmeter: 4/4\ntempo: 120\nlevel: 1\npractice: {minutes: 7}\n",
      "2027-01-04", "2027-12-20");
  REQUIRE(plan.fits);
  int alone = 0;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through) {
        CHECK(task.minutes > 7);
        CHECK(day.tasks.size() == 1);
        CHECK(day.note == DayNote::run_alone);
        ++alone;
      }
  CHECK(alone == 5);
}

TEST_CASE("a chunk takes six tenths of the longest day at most", "[numbers]") {
  const auto chunks = [](int minutes) {
    return sample::plan("title: T\nbars: 16\npractice: {minutes: " + std::to_string(minutes) +
                        "}\n")
        .pieces[0]
        .chunks.size();
  };
  CHECK(chunks(15) == 4);
  CHECK(chunks(12) == 6);
}

TEST_CASE("what does not fit is named, and what is placed keeps the rules") {
  const Plan plan = sample::plan(kFiveLines, "2027-03-10", "2027-03-16");
  CHECK_FALSE(plan.fits);
  CHECK_FALSE(plan.unplaced.empty());
}

TEST_CASE("an edition without a practice day left says what is left out") {
  const std::vector<Piece> pieces = {sample::piece(kFiveLines)};
  Terms terms =
      settle(sample::date("2027-03-10"), sample::date("2027-03-20"), {}, sample::steady());
  terms.days_off.weekdays.fill(true);
  Done learned;
  learned.date = sample::date("2027-03-08");
  learned.drill = Drill::learn;
  learned.bars = {1, 4};
  terms.record.done = {learned};
  const Plan plan = make_plan(pieces, terms);
  CHECK_FALSE(plan.fits);
  CHECK(plan.unplaced.size() >= 7);
  CHECK(sample::faults_of(plan) == "");
}

// The write-out of the weaker chunk follows its spoken part, when the other chunk has been spoken
// already: no write-out of that may come between them to keep them apart.
TEST_CASE("turns that are kept apart leave Temper in its order") {
  const std::vector<Piece> pieces = {
      sample::piece("title: Two\nbars: 8\nmeter: 5/4\ntempo: 130\nhard: [{bars: 1-4, level: 4}]\n"
                    "practice: {minutes: {wed: 60}}\n")};
  Terms terms = settle(sample::date("2027-02-01"), sample::date("2027-02-20"),
                       pieces.front().practice, sample::steady());
  const auto add = [&](const char* date, Drill drill, BarRange bars, std::vector<int> slips) {
    Done& done = terms.record.done.emplace_back();
    done.date = sample::date(date);
    done.drill = drill;
    done.bars = bars;
    done.slips = std::move(slips);
  };
  add("2027-01-06", Drill::learn, {1, 4}, {});
  add("2027-01-06", Drill::learn, {5, 8}, {});
  add("2027-01-06", Drill::join, {1, 8}, {});
  for (const char* wednesday : {"2027-01-13", "2027-01-20", "2027-01-27"})
    add(wednesday, Drill::recall, {1, 8}, {6});
  add("2027-01-27", Drill::spoken_part, {1, 4}, {});
  const Plan plan = make_plan(pieces, terms);
  CHECK(plan.fits);
  CHECK(plan.pieces.front().chunks[1].level == 5);
  CHECK(sample::faults_of(plan) == "");
}

}  // namespace cahier
