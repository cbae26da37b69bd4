// What a plan says of the edition before: its text and its JSON.
#include <catch2/catch.hpp>
#include <string>

#include "later_edition.h"
#include "plan/standing.h"
#include "practice/time_model.h"
#include "report/plan_json.h"
#include "report/plan_text.h"
#include "sample_pieces.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"
#include "text/source.h"
#include "text/yaml.h"

using namespace cahier;
using sample::has;

namespace {

Plan second() {
  Plan plan = sample::later_edition(sound_plan(), sample::date("2027-01-11"));
  plan.record.last->tasks_done -= 2;
  return plan;
}

std::string text_of(const Plan& plan) { return plan_text(plan, english_words(), false, false); }

YamlNode tree(const Plan& plan) {
  Diagnostics diagnostics;
  const auto read = parse_yaml(Source("plan.json", plan_json(plan)), diagnostics);
  for (const auto& one : diagnostics.all()) UNSCOPED_INFO(compose(one));
  REQUIRE_FALSE(diagnostics.has_errors());
  REQUIRE(read.has_value());
  return *read;
}

}  // namespace

TEST_CASE("the text of a first plan says nothing of editions, its JSON nothing of the past") {
  CHECK_FALSE(has(text_of(sound_plan()), "Edition"));
  const YamlNode plan = tree(sound_plan());
  for (const char* key : {"edition", "pace", "past"}) CHECK(plan.find(key) == nullptr);
  const YamlNode& piece = plan.find("pieces")->items.at(0);
  CHECK(piece.find("chunks")->items.at(0).find("slips") == nullptr);
  CHECK(piece.find("cues")->items.at(0).find("weight") == nullptr);
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
  CHECK(has(text_of(plan), "Everything is taken to be learned."));
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
  CHECK(has(sample::one_line(text_of(plan)), "· 2 chunks more "));
}

TEST_CASE("the JSON of a later plan tells the past") {
  Plan plan = second();
  sample::let_slip(plan, 0, 1, {7, 3});
  sample::share_dice(plan.pieces[0], {1, 2, 1});
  int run = 0;
  for (Done& done : plan.record.done)
    if (done.drill == Drill::run_through && ++run == 2) done.slips.reset();
  plan.method.pace = {1, 1, 1, 1.25, 1};
  const YamlNode json = tree(plan);
  CHECK(json.find("edition")->text == "2");
  CHECK(json.find("pace")->items.at(3).text == "1.25");
  const YamlNode& past = *json.find("past");
  const YamlNode& learned = past.find("learned")->items.at(1);
  CHECK(learned.find("piece")->text == "0");
  CHECK(learned.find("chunk")->text == "B1");
  CHECK(learned.find("date")->text == "2027-01-05");
  const auto& runs = past.find("run_throughs")->items;
  REQUIRE(runs.size() == 2);
  CHECK(runs[0].find("date")->text == "2027-01-08");
  CHECK(runs[0].find("slips")->kind == YamlNode::Kind::list);
  CHECK(runs[1].find("slips")->kind == YamlNode::Kind::null);
  CHECK(past.find("tasks")->items.at(2).find("drill")->text == "learn");
  CHECK(past.find("tasks")->items.at(2).find("chunks")->items.at(0).text == "B1");
  const YamlNode& piece = json.find("pieces")->items.at(0);
  CHECK(piece.find("chunks")->items.at(1).find("slips")->text == "3");
  CHECK(piece.find("chunks")->items.at(1).find("trials")->text == "7");
  CHECK(piece.find("cues")->items.at(1).find("weight")->text == "2");
}

TEST_CASE("the mean pace is that of the bars") {
  Plan plan = sound_plan();
  plan.method.pace = {1, 1.5, 1, 2.5, 1};
  CHECK(mean_pace(plan) == Approx(2));  // four bars of level 2, four of level 4
}
