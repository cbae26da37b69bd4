#include "report/plan_json.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <string>

#include "catch.h"
#include "later_edition.h"
#include "report/json_lines.h"
#include "sample_plan.h"
#include "sheet_words.h"
#include "sound_plan.h"

using namespace cahier;
using sample::has;

namespace {

using Json = nlohmann::ordered_json;
using Names = std::vector<std::string>;

Json tree(const Plan& plan) { return Json::parse(plan_json(plan)); }

Names keys(const Json& object) {
  Names names;
  for (const auto& [key, value] : object.items()) names.push_back(key);
  return names;
}

}  // namespace

TEST_CASE("a plan as JSON has the format's keys in their order") {
  const Json plan = tree(sound_plan());
  CHECK(keys(plan) == Names{"format", "from", "by", "fits", "minutes_total", "pieces", "days",
                            "unplaced", "spacing", "quality", "gave_way"});
  CHECK(plan.at("format") == "cahier-plan-1");
  CHECK(plan.at("from") == "2027-01-04");
  CHECK(plan.at("by") == "2027-01-18");
  CHECK(plan.at("fits") == true);
  CHECK(plan.at("minutes_total") == 56);

  const Json& piece = plan.at("pieces").at(0);
  CHECK(keys(piece) == Names{"title", "bars", "first_bar", "parts", "sections", "chunks", "cues",
                             "look_alikes", "forks", "traps", "rejoin", "short_title", "dice"});
  const Json& sections = piece.at("sections");
  CHECK(keys(sections.at(0)) == Names{"name", "first", "last", "same_as", "ladder"});
  CHECK(sections.at(0).at("same_as").is_null());
  CHECK(sections.at(2).at("same_as").at(1) == 4);
  CHECK(keys(piece.at("chunks").at(0)) == Names{"id", "first", "last", "section", "level"});
  CHECK(keys(piece.at("cues").at(0)) == Names{"number", "bar", "section"});
  CHECK(keys(piece.at("look_alikes").at(0)) == Names{"ranges", "fork"});
  CHECK(keys(piece.at("dice")) ==
        Names{"dice", "faces", "count", "order_matters", "rows", "again"});
  CHECK(piece.at("dice").at("rows").at(0).at("outcomes").size() == 12);

  const Json& days_listed = plan.at("days");
  REQUIRE(days_listed.size() == 14);
  CHECK(keys(days_listed[0]) == Names{"date", "allowance", "minutes", "tasks"});
  CHECK(keys(days_listed[1]) == Names{"date", "allowance", "minutes", "tasks", "note"});
  CHECK(days_listed[6].at("allowance").dump() == "0");
  const Json& learn = days_listed[0].at("tasks").at(0);
  CHECK(keys(learn) == Names{"id", "piece", "stage", "drill", "first", "last", "chunks", "steps",
                             "tempo", "minutes", "beat", "cues", "throws", "block", "fork", "score",
                             "instrument", "reason"});
  CHECK(learn.at("score") == "open");
  CHECK(learn.at("instrument") == true);
  CHECK(learn.at("id") == "0104-1");
  CHECK(learn.at("stage") == "build");
  CHECK(learn.at("chunks").at(0) == "A1");
  CHECK(learn.at("minutes") == 8.5);
  CHECK(keys(learn.at("steps").at(0)) == Names{"parts", "times"});
}

TEST_CASE("nothing is played in a write-out, so it has no tempo in JSON") {
  const Json plan = tree(sound_plan());
  const Json& speak = plan.at("days").at(3).at("tasks").at(0);
  const Json& write = plan.at("days").at(3).at("tasks").at(1);
  CHECK(keys(speak.at("steps").at(0)) == Names{"parts", "times", "say"});
  CHECK(write.at("stage") == "temper");
  CHECK(write.at("drill") == "write_out");
  CHECK(write.at("tempo").is_null());
  CHECK(write.at("score") == "shut");
  CHECK(write.at("instrument") == false);
  CHECK(speak.at("tempo") == 66);
}

TEST_CASE("JSON tells each chunk's days of recall beside the ideal ones, and the share of all") {
  const Json plan = tree(sound_plan());
  const Json& spacing = plan.at("spacing");
  CHECK(keys(spacing) == Names{"near_share", "forced_by_days_off", "chunks"});
  CHECK(spacing.at("near_share").dump() == "1");
  CHECK(spacing.at("forced_by_days_off") == 0);
  REQUIRE(spacing.at("chunks").size() == 2);
  const Json& chunk = spacing.at("chunks").at(0);
  CHECK(keys(chunk) == Names{"piece", "chunk", "recalls", "ideal", "near", "gaps"});
  CHECK(chunk.at("piece") == 0);
  CHECK(chunk.at("chunk") == "A1");
  CHECK(chunk.at("near") == 4);
  CHECK(chunk.at("gaps") == 4);
  REQUIRE(chunk.at("recalls").size() == 6);
  CHECK(chunk.at("recalls").at(1) == "2027-01-06");
  REQUIRE(chunk.at("ideal").size() == 5);
  CHECK(chunk.at("ideal").at(1) == "2027-01-09");
}

TEST_CASE("JSON escapes quotes, backslashes and controls and keeps UTF-8") {
  // RFC 8259, section 7.
  Plan plan = sound_plan();
  plan.pieces[0].piece.title = "Dvořák \"№ 1\" \\ \t\n\x01 ♭";
  CHECK(has(plan_json(plan), R"("title": "Dvořák \"№ 1\" \\ \t\n\u0001 ♭")"));
  CHECK(tree(plan).at("pieces").at(0).at("title") == plan.pieces[0].piece.title);
}

TEST_CASE("a byte that is not UTF-8 never makes the JSON unreadable") {
  Plan plan = sound_plan();
  plan.pieces[0].piece.title = "Dvo\xF8\xE1k";
  CHECK(tree(plan).at("pieces").at(0).at("title") == "Dvo\uFFFD\uFFFDk");
}

TEST_CASE("numbers in JSON have a point only where something follows it") {
  Plan plan = sound_plan();
  plan.days[0].allowance = 14.5;
  plan.days[1].allowance = 20;
  plan.days[2].allowance = 0.1 + 0.2;
  const std::string json = plan_json(plan);
  for (const char* shown :
       {R"("allowance": 14.5, )", R"("allowance": 20, )", R"("allowance": 0.3, )"})
    CHECK(has(json, shown));
}

TEST_CASE("more than 36 cue starts make a list of dice tables") {
  Plan plan = sound_plan();
  std::vector<int> numbers(40);
  for (int at = 0; at < 40; ++at) numbers[at] = at + 1;
  plan.pieces[0].dice = dice_tables(numbers);
  CHECK(tree(plan).at("pieces").at(0).at("dice").size() == 2);
}

TEST_CASE("a misfit says in JSON what is not placed and what would help") {
  Plan plan = sound_plan();
  plan.fits = false;
  plan.unplaced = {{0, Drill::learn, {5, 8}, 8.5, Why::no_room_to_learn}};
  plan.remedies = {{"--minutes 22", 22}, {"--repetitions 4", 0.2}};
  const Json read = tree(plan);
  CHECK(read.at("fits") == false);
  CHECK(keys(read) == Names{"format", "from", "by", "fits", "minutes_total", "pieces", "days",
                            "unplaced", "remedies", "spacing", "quality", "gave_way"});
  const Json& work = read.at("unplaced").at(0);
  CHECK(keys(work) == Names{"piece", "drill", "first", "last", "why", "minutes"});
  CHECK(has(work.at("why"), "room left to learn"));
  CHECK(read.at("remedies").at(0).at("say") == "--minutes 22");
}

TEST_CASE("JSON tells each figure with its bounds, and why it is short") {
  Plan plan = sound_plan();
  // The easier chunk is spoken before the weaker one.
  std::swap(plan.days[3].tasks[0], plan.days[4].tasks[1]);
  const Json figures = tree(plan).at("quality");
  REQUIRE_FALSE(figures.empty());
  bool any_short = false;
  for (const Json& figure : figures) {
    CHECK(keys(figure) == Names{"name", "figure", "wanted", "met", "why"});
    CHECK(figure.at("met").get<bool>() == figure.at("why").is_null());
    for (const auto& [bound, value] : figure.at("wanted").items()) {
      CHECK((bound == "at_least" || bound == "at_most"));
      CHECK(value.is_number());
    }
    any_short = any_short || !figure.at("met").get<bool>();
  }
  CHECK(any_short);
  CHECK(figures.at(0).at("name") == "not_at_the_end");
  CHECK(has(plan_json(plan), "\n  {\"name\": \""));
}

TEST_CASE("JSON tells how late it gets when learning takes longer, where that was asked") {
  Plan plan = sound_plan();
  CHECK_FALSE(tree(plan).contains("sensitivity"));
  plan.sensitivity = {{1.25, 0}, {1.5, std::nullopt}};
  CHECK(has(plan_json(plan), R"("sensitivity": [{"learning": 1.25, "days_late": 0}, )"
                             R"({"learning": 1.5, "days_late": null}])"));
}

TEST_CASE("the JSON of a first plan tells nothing of the past") {
  const Json plan = tree(sound_plan());
  for (const char* key : {"edition", "pace", "past"}) CHECK_FALSE(plan.contains(key));
  const Json& piece = plan.at("pieces").at(0);
  CHECK_FALSE(piece.at("chunks").at(0).contains("slips"));
  CHECK_FALSE(piece.at("cues").at(0).contains("weight"));
}

TEST_CASE("the JSON of a later plan tells the past") {
  Plan plan = sample::later_edition(sound_plan(), sample::date("2027-01-11"));
  sample::let_slip(plan, 0, 1, {7, 3});
  sample::share_dice(plan.pieces[0], {1, 2, 1});
  int run = 0;
  for (Done& done : plan.record.done)
    if (done.drill == Drill::run_through && ++run == 2) done.slips.reset();
  plan.method.pace = {1, 1, 1, 1.25, 1};
  const Json json = tree(plan);
  CHECK(json.at("edition") == 2);
  CHECK(json.at("pace").at(3) == 1.25);
  const Json& learned = json.at("past").at("learned").at(1);
  CHECK(learned.at("piece") == 0);
  CHECK(learned.at("chunk") == "B1");
  CHECK(learned.at("date") == "2027-01-05");
  const Json& runs = json.at("past").at("run_throughs");
  REQUIRE(runs.size() == 2);
  CHECK(runs.at(0).at("date") == "2027-01-08");
  CHECK(runs.at(0).at("slips").is_array());
  CHECK(runs.at(1).at("slips").is_null());
  const Json& task = json.at("past").at("tasks").at(2);
  CHECK(task.at("drill") == "learn");
  CHECK(task.at("chunks").at(0) == "B1");
  const Json& piece = json.at("pieces").at(0);
  CHECK(piece.at("chunks").at(1).at("slips") == 3);
  CHECK(piece.at("chunks").at(1).at("trials") == 7);
  CHECK(piece.at("cues").at(1).at("weight") == 2);
}

TEST_CASE("JSON begins new lines where it is told to, and nowhere else") {
  const Json json = Json::parse(R"({"b":[{"a":1,"c":[]},{"a":2}],"a":{"b":[1.5,null]}})");
  CHECK(json_lines(json, {}) == R"({"b": [{"a": 1, "c": []}, {"a": 2}], "a": {"b": [1.5, null]}})");
  CHECK(
      json_lines(json, {{1, {".a", ".b:"}}, {3, {".b[]", ".b[].c", ".a.b[]"}}}) ==
      "{\"b\":\n [{\"a\": 1,\n   \"c\": []},\n   {\"a\": 2}],\n \"a\": {\"b\": [1.5,\n   null]}}");
}

TEST_CASE("each day stands on one line of JSON, and the same plan gives the same bytes") {
  const std::string json = plan_json(sound_plan());
  CHECK(json == plan_json(sound_plan()));
  std::size_t at = 0;
  int days_met = 0;
  while (at < json.size()) {
    const auto end = json.find('\n', at);
    const std::string line = json.substr(at, end - at);
    if (has(line, "{\"date\": ")) {
      ++days_met;
      CHECK(std::count(line.begin(), line.end(), '{') == std::count(line.begin(), line.end(), '}'));
    }
    at = end + 1;
  }
  CHECK(days_met == 14);
}
