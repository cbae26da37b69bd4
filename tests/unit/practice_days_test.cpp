// Which days are practice days, what is left of one that a run-through has to itself, and what was
// done on those before the plan.
#include "catch.h"
#include "plan/chunks/analyse.h"
#include "plan/schedule/divided_work.h"
#include "plan/schedule/draft.h"
#include "sample_plan.h"

using namespace cahier;

namespace {

Terms terms_of(double minutes) {
  Wishes wishes;
  wishes.minutes.emplace();
  wishes.minutes->fill(0);
  wishes.minutes->front() = minutes;
  return settle(sample::date("2027-01-04"), sample::date("2027-01-18"), wishes, sample::steady());
}

}  // namespace

TEST_CASE("a weekday with one minute is a practice day, one without minutes is off") {
  const std::vector<Day> days = calendar(terms_of(1));
  REQUIRE(days.size() == 14);
  CHECK_FALSE(days[0].off);  // a Monday
  CHECK(days[0].allowance == 1);
  CHECK(days[1].off);
  CHECK(calendar(terms_of(0))[0].off);
}

TEST_CASE("a day that a run-through has to itself has no minute left") {
  const Piece piece = sample::piece("title: Long\nbars: 400\ntempo: 60\n");
  const Terms terms = terms_of(20);
  const std::vector<Day> days = calendar(terms);
  const DividedWork divided({analyse(piece, terms.method, 6)}, terms, days);
  Draft draft(divided.work, false);
  REQUIRE(draft.room[7] == 20);
  RunDays runs{std::vector<int>(days.size(), 0), true};
  runs.runs[7] = 1;
  draft.set_aside(*draft.pieces[0], runs);
  CHECK(draft.room[0] == 20);
  CHECK(draft.room[7] == 0);
  CHECK(draft.schedule.days[7].note == DayNote::run_alone);
}

TEST_CASE("starts from bars that are no cue starts today were as many as held and failed") {
  const Piece piece = sample::piece("title: Short\nbars: 8\ntempo: 60\n");
  Record record;
  Done done;
  done.date = sample::date("2027-01-04");
  done.drill = Drill::cue_starts;
  done.bars = {3, 6};
  done.hit = {3, 3};
  done.missed = {6};
  record.done = {done};
  const Method& method = sample::steady();
  const std::vector<Day> past =
      past_days(record, {analyse(piece, method, 6)}, method, sample::date("2027-01-11"));
  REQUIRE(past.size() == 1);
  REQUIRE(past[0].tasks.size() == 1);
  CHECK(past[0].tasks[0].throws == 3);
  CHECK(past[0].tasks[0].from_starts.size() == 2);
  CHECK(past[0].tasks[0].cues.empty());
}
