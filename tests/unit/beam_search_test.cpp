// Plans of short pieces that have hardly a minute to spare.
#include "plan/search/beam_search.h"

#include <algorithm>

#include "catch.h"
#include "drafted.h"
#include "plan/rules/rules.h"
#include "plan/schedule/tight.h"
#include "plan/search/planner.h"

namespace cahier {
namespace {

// Bars that are learned alike, two to a chunk, with five run-throughs on three days to come.
const char* const kEven = "bars: 8\ntempo: 96\n";
const std::vector<BarRange> kPairs = {{1, 2}, {3, 4}, {5, 6}, {7, 8}};

std::vector<std::vector<DayChoice>> plans_of(const sample::Drafted& work) {
  Effort effort;
  const auto piece = tiny_piece(work.divided.work);
  REQUIRE(piece);
  return beam_search(*piece, work.divided.analyses.front(), effort);
}

// Without spoken and written work.
bool fits(const std::string& yaml, const std::string& from, const std::string& by,
          int repetitions) {
  const Piece piece = sample::piece("title: Tight\n" + yaml);
  Wishes wishes = piece.practice;
  wishes.temper = Temper::no;
  Method method = sample::steady();
  method.repetitions = repetitions;
  const auto plan =
      plan_that_fits({piece}, settle(sample::date(from), sample::date(by), wishes, method));
  if (plan) CHECK(violations(*plan).empty());
  return plan.has_value();
}

}  // namespace

TEST_CASE("every plan found is learned once, joined and proved within the minutes") {
  sample::Drafted work(kEven, kPairs, 12, 10);
  const auto plans = plans_of(work);
  REQUIRE_FALSE(plans.empty());
  for (const auto& plan : plans) {
    std::vector<int> learned;
    int runs = 0;
    int run_days = 0;
    for (const DayChoice& day : plan) {
      learned.insert(learned.end(), day.learned.begin(), day.learned.end());
      runs += day.runs;
      run_days += day.runs > 0 ? 1 : 0;
    }
    std::sort(learned.begin(), learned.end());
    CHECK(learned == std::vector<int>{0, 1, 2, 3});
    CHECK(runs >= 5);
    CHECK(run_days >= 3);
  }
}

TEST_CASE("a plan found is laid out as it was found, and keeps the rules") {
  sample::Drafted work(kEven, kPairs, 12, 10);
  TightVariant variant;
  variant.chosen = plans_of(work).front();
  const Schedule schedule = lay_tight(work.divided.work, variant);
  CHECK(schedule.unplaced.empty());
  for (std::size_t day = 0; day < schedule.days.size(); ++day) {
    const DayChoice& choice = variant.chosen[day];
    std::size_t tasks = choice.recalls.size() + choice.learned.size() + choice.joins.size() +
                        static_cast<std::size_t>(choice.runs);
    CHECK(schedule.days[day].tasks.size() == tasks);
  }
}

TEST_CASE("no plan is found where the minutes do not hold what is to be learned") {
  sample::Drafted work(kEven, kPairs, 12, 2);
  CHECK(plans_of(work).empty());
}

TEST_CASE("a year of days is searched like a week") {
  sample::Drafted work(kEven, kPairs, 366, 10, 200);
  const auto plans = plans_of(work);
  REQUIRE_FALSE(plans.empty());
  CHECK(plans.front().size() == 366);
}

TEST_CASE("a hundred beginnings are kept, most of them complete in the end", "[numbers]") {
  sample::Drafted work("bars: 32\n", sample::fours(8), 20, 60);
  const std::size_t complete = plans_of(work).size();
  CHECK(complete > 50);
  CHECK(complete <= 100);
}

TEST_CASE("a search that has spent its effort finds nothing") {
  sample::Drafted work(kEven, kPairs, 12, 10);
  Effort effort(0);
  CHECK(beam_search(*tiny_piece(work.divided.work), work.divided.analyses.front(), effort).empty());
}

TEST_CASE("what was begun, several pieces and long ones are left to the other ways") {
  CHECK(tiny_piece(sample::Drafted("bars: 48\n", sample::fours(12), 40, 60).divided.work));
  CHECK_FALSE(tiny_piece(sample::Drafted("bars: 52\n", sample::fours(13), 40, 60).divided.work));
}

// The exact solver of tests/exact found plans for these, and the judge of plans allowed them. Each
// is half a minute from what cannot be done.
TEST_CASE("short pieces fit in as few minutes as an exact solver needs", "[numbers]") {
  CHECK(
      fits("instrument: organ\nbars: 22\nmeter: 4/4\ntempo: 120\nlevel: 2\nsections:\n"
           "  - {name: A, bars: 1-6, phrases: [1, 2-3, 4-6]}\n"
           "  - {name: B, bars: 7-15, phrases: [7-9, 10-12, 13-15]}\n"
           "  - {name: C, bars: 16-22, phrases: [16-19, 20-22]}\n"
           "hard:\n  - {bars: 13-15, level: 3}\n  - {bars: 16-19, level: 5}\n"
           "  - {bars: 20-22, level: 4}\n"
           "look-alikes:\n  - {bars: [4-5, 20-21], fork: [5, 21]}\n"
           "practice: {days off: [2027-01-19], minutes: {mon: 10.5, tue: 10.5, wed: 10.5,"
           " thu: 10.5, fri: 10.5, sat: 15.5, sun: 10.5}}\n",
           "2027-01-08", "2027-01-20", 5));
  CHECK(
      fits("instrument: piano\nbars: 18\nmeter: 6/8\ntempo: 48\nbeat: dotted quarter\n"
           "level: 4\nchanges:\n  - {bar: 12, tempo: 120, beat: dotted quarter}\nsections:\n"
           "  - {name: A, bars: 1-7, level: 4, phrases: [1-3, 4-5, 6-7]}\n"
           "  - {name: B, bars: 8-11, phrases: [8, 9-11]}\n"
           "  - {name: C, bars: 12-18, phrases: [12-14, 15-18]}\n"
           "hard:\n  - {bars: 12-14, level: 3}\n  - {bars: 15-18, level: 3}\n"
           "practice: {days off: [2027-01-12, 2027-01-13], minutes: 14}\n",
           "2027-01-08", "2027-01-17", 5));
  CHECK(
      fits("instrument: violin\nbars: 28\nmeter: 4/4\ntempo: 48\nlevel: 2\nsections:\n"
           "  - {name: A, bars: 1-11, phrases: [1-2, 3-4, 5-7, 8-11]}\n"
           "  - {name: B, bars: 12-17, level: 1, phrases: [12, 13-15, 16-17]}\n"
           "  - {name: again, bars: 18-28, same as: 1-11}\n"
           "hard:\n  - {bars: 12, level: 5}\n  - {bars: 13-15, level: 3}\n"
           "look-alikes:\n  - {bars: [3-4, 16-17], fork: [4, 17]}\n"
           "practice: {minutes: 4.5}\n",
           "2027-01-06", "2027-01-15", 1));
  CHECK(
      fits("instrument: violin\nbars: 31\nmeter: 2/4\ntempo: 56\nlevel: 5\nsections:\n"
           "  - {name: A, bars: 1-12, level: 5, phrases: [1, 2-4, 5-7, 8, 9-12]}\n"
           "  - {name: B, bars: 13-19, level: 5, phrases: [13, 14, 15-16, 17-19]}\n"
           "  - {name: again, bars: 20-31, same as: 1-12}\n"
           "hard:\n  - {bars: 2-4, level: 4}\n  - {bars: 9-12, level: 4}\n"
           "  - {bars: 13, level: 3}\n  - {bars: 14, level: 4}\n"
           "practice: {minutes: 5.5}\n",
           "2027-01-08", "2027-01-17", 5));
}

}  // namespace cahier
