// What the text of a plan says of the edition before.
#include <string>

#include "catch.h"
#include "later_edition.h"
#include "plan/standing.h"
#include "practice/time_model.h"
#include "report/plan_text.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::has;

namespace {

Plan second() {
  Plan plan = sample::later_edition(sound_plan(), sample::date("2027-01-11"));
  plan.record.last->tasks_done -= 2;
  return plan;
}

std::string text_of(const Plan& plan) { return plan_text(plan, english_words(), false, false); }

}  // namespace

TEST_CASE("the text of a first plan says nothing of editions") {
  CHECK_FALSE(has(text_of(sound_plan()), "Edition"));
}

TEST_CASE("the text of a later plan says how it stands") {
  Plan plan = second();
  const int tasks = plan.record.last->tasks;
  CHECK(has(text_of(plan), "\nEdition 2 · on course · " + std::to_string(tasks - 2) + " of " +
                               std::to_string(tasks) + " tasks done · 8 of 8 new bars learned\n"));
  plan.record.last->days_behind = 3;
  CHECK(has(text_of(plan), "\nEdition 2 · 3 days behind · "));
  plan.record.last->days_behind = -1;
  CHECK(has(text_of(plan), "\nEdition 2 · 1 day ahead · "));
  plan.upkeep = true;
  CHECK(has(text_of(plan), "\nEdition 2 · keeping what is learned · "));
  CHECK(has(text_of(plan), " · Until Monday 18 January 2027\n"));
  CHECK(has(text_of(plan), "Everything has been learned since Tuesday 5 January."));
  plan.record.edition = 1;  // without a log
  CHECK(has(text_of(plan), "Everything counts as learned."));
}

TEST_CASE("the text names the pace by level, only where the player has one") {
  Plan plan = sample::later_edition(sample::plan(sample::kStudy), sample::date("2027-01-18"));
  CHECK_FALSE(has(text_of(plan), "minutes a bar and part"));
  plan.method.pace = {1, 1.2, 1.3, 1.6, 1.7};
  sample::let_slip(plan, 0, 0, {6, 2});  // a level of slips, none of learning
  const std::vector<LevelPace> paces = level_paces(plan);
  REQUIRE(paces.size() == 2);
  CHECK(paces[0].level == 2);
  CHECK(paces[1].level == 4);
  // Minutes are rounded up to halves, chunk by chunk.
  CHECK(paces[0].now / paces[0].first == Approx(1.2).margin(0.12));
  CHECK(paces[1].now / paces[1].first == Approx(1.6).margin(0.12));
  CHECK(has(sample::one_line(text_of(plan)), "Learning, minutes a bar and part: level 2 "));
  // All chunks of level 4 have four bars for two hands.
  const TimeModel model(plan.pieces[0].piece, plan.method);
  CHECK(paces[1].now == Approx(model.learn({17, 20}, 4) / 8));
}

TEST_CASE("the text names what slips most, the most frequent first") {
  Plan plan = sample::later_edition(sample::plan(sample::kStudy), sample::date("2027-01-18"));
  sample::let_slip(plan, 0, 0, {6, 2});
  sample::let_slip(plan, 0, 3, {5, 4});
  CHECK(has(text_of(plan), "\n  Slips most: A4, 13–16 (4 of 5) · A1, 1–4 (2 of 6)\n"));
  for (int chunk = 0; chunk < 7; ++chunk) sample::let_slip(plan, 0, chunk, {6, 2});
  CHECK(has(sample::one_line(text_of(plan)), "· 2 more chunks "));
}

TEST_CASE("the mean pace is that of the bars") {
  Plan plan = sound_plan();
  plan.method.pace = {1, 1.5, 1, 2.5, 1};
  CHECK(mean_pace(plan) == Approx(2));  // four bars of level 2, four of level 4
}
