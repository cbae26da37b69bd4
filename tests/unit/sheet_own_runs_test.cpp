// The tally of a later edition: the player's own run-throughs, and what they tell.
#include <string>

#include "catch.h"
#include "drawn_sheet.h"
#include "later_edition.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::DrawnSheet;
using sample::has;
using sample::one_line;
using sample::with_runs;

namespace {

int dots(const DrawnSheet& sheet) {
  int number = 0;
  for (const DrawnItem& item : sheet.canvas().pages().front().items)
    if (const auto* circle = std::get_if<DrawnCircle>(&item))
      number += circle->use == CircleUse::ornament && circle->paint.fill && circle->diameter > 2.2;
  return number;
}

}  // namespace

TEST_CASE("run-throughs that were made stand at the top of the tally, and numbers go on") {
  const DrawnSheet sheet(draw_run_tally, with_runs());
  const std::string words = sheet.words();
  CHECK(has(words, "\n7, 11\n"));
  CHECK(has(words, "\n6\n"));
  CHECK(has(words, "\n7\n14 Jan\n"));
  CHECK(has(one_line(words), "1 run-through is still to come"));
  CHECK(dots(sheet) == 4 + 3 + 1);  // clean, recorded, listened to
}

TEST_CASE("the tally says what the player's own runs tell, rounded down") {
  // One-sided 95 % bound for 4 clean of 6 (Clopper and Pearson 1934; value computed): .271338.
  const std::string words = one_line(DrawnSheet(draw_run_tally, with_runs()).words());
  CHECK(has(words, "So far: 6 run-throughs, 4 clean."));
  CHECK(has(words, "count on 2 clean ones in ten"));
  CHECK(has(words, "For the teacher: at least 27\u00a0%"));
  CHECK(has(words, "their number was fixed beforehand"));
}

TEST_CASE("the tally says what it will tell if the runs to come are clean") {
  // The same bound for 5 clean of 7: .341261 (value computed), in whole tenths.
  const std::string words = one_line(DrawnSheet(draw_run_tally, with_runs()).words());
  CHECK(has(words, "If the 1 to come is clean, that makes 5 of 7: count on 3 in ten."));
  // Not of another date.
  Plan kept = with_runs();
  kept.upkeep = true;
  CHECK_FALSE(has(one_line(DrawnSheet(draw_run_tally, kept).words()), "that makes"));
}

TEST_CASE("runs of which nobody said how they went are not counted, and the tally says so") {
  Plan plan = with_runs();
  plan.record.done.back().slips.reset();
  const std::string words = one_line(DrawnSheet(draw_run_tally, plan).words());
  CHECK(has(words, "So far: 5 run-throughs, 3 clean."));
  CHECK(has(words, "One run is not counted: nobody wrote down how it went."));
  CHECK(has(words, "not told"));
  for (Done& done : plan.record.done) done.slips.reset();
  CHECK_FALSE(has(one_line(DrawnSheet(draw_run_tally, plan).words()), "So far"));
}

TEST_CASE("which runs are witnessed is what the plan says") {
  Plan plan = with_runs();
  plan.record.done.resize(plan.record.done.size() - 2);
  plan.days.front().tasks = {sound::runs(3)};
  plan.days.front().tasks.front().reason = Reason::listener;
  // Somebody listens to each of three, and may to those in the spare rows.
  CHECK(DrawnSheet(draw_run_tally, plan).circles_to_tick() == 4 * (3 + 3));
}

TEST_CASE("runs none of which was clean give no bound") {
  Plan plan = with_runs();
  for (Done& done : plan.record.done)
    if (done.drill == Drill::run_through) done.slips = {5};
  const std::string words = one_line(DrawnSheet(draw_run_tally, plan).words());
  CHECK(has(words, "So far: 6 run-throughs, none of them clean."));
  CHECK_FALSE(has(words, "Taken together"));
}

TEST_CASE("so few runs that they let nothing be counted on say so") {
  // One clean of three: .016952 (value computed).
  Plan plan = with_runs();
  plan.record.done.resize(plan.record.done.size() - 3);
  int run = 0;
  for (Done& done : plan.record.done)
    if (done.drill == Drill::run_through)
      done.slips = run++ == 0 ? std::vector<int>{} : std::vector<int>{5};
  const std::string words = one_line(DrawnSheet(draw_run_tally, plan).words());
  CHECK(has(words, "So few runs tell nothing yet."));
  CHECK_FALSE(has(words, "Taken together"));
}

TEST_CASE("when all run-throughs are made the tally asks for no more") {
  Plan plan = with_runs();
  for (Day& day : plan.days) day.tasks.clear();
  const std::string words = one_line(DrawnSheet(draw_run_tally, plan).words());
  CHECK(has(words, "All the run-throughs that were asked for have been made."));
  CHECK_FALSE(has(words, "still to come"));
}

TEST_CASE("run-throughs for an earlier date stand in the tally before those to come") {
  Plan plan = with_runs();
  plan.upkeep = true;
  plan.days.front().tasks = {sound::runs(3)};
  plan.days.front().tasks.front().reason = Reason::recorded;
  const DrawnSheet sheet(draw_run_tally, plan);
  const std::string words = one_line(sheet.words());
  CHECK(has(words, "5 run-throughs are still to come"));
  CHECK(has(words, "From run 7 on make a recording"));
  // Five rows, of which three are to be recorded, and four to spare for whatever happens.
  CHECK(sheet.circles_to_tick() == 2 * 5 + 3 + 4 * 4);
}

TEST_CASE("a run-through that is only taken for granted does not stand in the tally") {
  Plan plan = with_runs();
  plan.record.edition = 1;
  plan.upkeep = true;
  const std::string words = one_line(DrawnSheet(draw_run_tally, plan).words());
  CHECK_FALSE(has(words, "So far"));
  CHECK_FALSE(has(words, "7, 11"));
}
