#include "report/plan_json.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "sound_plan.h"
#include "text/source.h"
#include "text/yaml.h"

using namespace cahier;

namespace {

bool holds(const std::string& text, const std::string& part) {
  return text.find(part) != std::string::npos;
}

// JSON is YAML in flow style, so the tree of one is the tree of the other.
YamlNode tree(const Plan& plan) {
  Diagnostics diagnostics;
  const auto read = parse_yaml(Source("plan.json", plan_json(plan)), diagnostics);
  for (const auto& one : diagnostics.all()) UNSCOPED_INFO(compose(one));
  REQUIRE_FALSE(diagnostics.has_errors());
  REQUIRE(read.has_value());
  return *read;
}

std::vector<std::string> keys(const YamlNode& node) {
  std::vector<std::string> names;
  for (const auto& entry : node.entries) names.push_back(entry.key.text);
  return names;
}

using Names = std::vector<std::string>;

}  // namespace

TEST_CASE("a plan as JSON has the format's keys in their order") {
  const YamlNode plan = tree(sound_plan());
  CHECK(keys(plan) == Names{"format", "from", "by", "fits", "minutes_total", "pieces", "days",
                            "unplaced", "spacing"});
  CHECK(plan.find("format")->text == "cahier-plan-1");
  CHECK(plan.find("from")->text == "2027-01-04");
  CHECK(plan.find("by")->text == "2027-01-18");
  CHECK(plan.find("fits")->text == "true");
  CHECK(plan.find("minutes_total")->text == "53.5");

  const YamlNode& piece = plan.find("pieces")->items.at(0);
  CHECK(keys(piece) == Names{"title", "bars", "first_bar", "parts", "sections", "chunks", "cues",
                             "look_alikes", "dice"});
  CHECK(keys(piece.find("sections")->items.at(0)) == Names{"name", "first", "last", "same_as"});
  CHECK(piece.find("sections")->items.at(0).find("same_as")->kind == YamlNode::Kind::null);
  CHECK(piece.find("sections")->items.at(2).find("same_as")->items.at(1).text == "4");
  CHECK(keys(piece.find("chunks")->items.at(0)) ==
        Names{"id", "first", "last", "section", "level"});
  CHECK(keys(piece.find("cues")->items.at(0)) == Names{"number", "bar", "section"});
  CHECK(keys(piece.find("look_alikes")->items.at(0)) == Names{"ranges", "fork"});
  CHECK(keys(*piece.find("dice")) ==
        Names{"dice", "faces", "count", "order_matters", "rows", "again"});
  CHECK(piece.find("dice")->find("rows")->items.at(0).find("outcomes")->items.size() == 12);

  const auto& days_listed = plan.find("days")->items;
  REQUIRE(days_listed.size() == 14);
  CHECK(keys(days_listed[0]) == Names{"date", "allowance", "minutes", "tasks"});
  CHECK(keys(days_listed[1]) == Names{"date", "allowance", "minutes", "tasks", "note"});
  CHECK(days_listed[6].find("allowance")->text == "0");
  const YamlNode& learn = days_listed[0].find("tasks")->items.at(0);
  CHECK(keys(learn) == Names{"id", "piece", "stage", "drill", "first", "last", "chunks", "steps",
                             "tempo", "minutes", "beat", "cues", "throws", "block", "fork",
                             "reason"});
  CHECK(learn.find("id")->text == "0104-1");
  CHECK(learn.find("stage")->text == "build");
  CHECK(learn.find("chunks")->items.at(0).text == "A1");
  CHECK(learn.find("minutes")->text == "8.5");
  CHECK(keys(learn.find("steps")->items.at(0)) == Names{"parts", "times"});
}

TEST_CASE("nothing is played in a write-out, so it has no tempo in JSON") {
  const YamlNode plan = tree(sound_plan());
  const YamlNode& speak = plan.find("days")->items.at(2).find("tasks")->items.at(2);
  const YamlNode& write = plan.find("days")->items.at(2).find("tasks")->items.at(3);
  CHECK(keys(speak.find("steps")->items.at(0)) == Names{"parts", "times", "spoken"});
  CHECK(write.find("stage")->text == "temper");
  CHECK(write.find("drill")->text == "write_out");
  CHECK(write.find("tempo")->kind == YamlNode::Kind::null);
  CHECK(speak.find("tempo")->text == "66");
}

TEST_CASE("JSON tells each chunk's days of recall beside the ideal ones, and the share of all") {
  const YamlNode plan = tree(sound_plan());
  const YamlNode& spacing = *plan.find("spacing");
  CHECK(keys(spacing) == Names{"near_share", "forced_by_days_off", "chunks"});
  // Eight of nine, rounded down.
  CHECK(spacing.find("near_share")->text == "0.8888");
  CHECK(spacing.find("forced_by_days_off")->text == "0");
  REQUIRE(spacing.find("chunks")->items.size() == 2);
  const YamlNode& chunk = spacing.find("chunks")->items[0];
  CHECK(keys(chunk) == Names{"piece", "chunk", "recalls", "ideal", "near", "gaps"});
  CHECK(chunk.find("piece")->text == "0");
  CHECK(chunk.find("chunk")->text == "A1");
  CHECK(chunk.find("near")->text == "4");
  CHECK(chunk.find("gaps")->text == "5");
  REQUIRE(chunk.find("recalls")->items.size() == 6);
  CHECK(chunk.find("recalls")->items[1].text == "2027-01-06");
  REQUIRE(chunk.find("ideal")->items.size() == 5);
  CHECK(chunk.find("ideal")->items[1].text == "2027-01-09");
}

TEST_CASE("JSON escapes quotes, backslashes and controls and keeps UTF-8") {
  // RFC 8259, section 7.
  Plan plan = sound_plan();
  plan.pieces[0].piece.title = "Dvořák \"№ 1\" \\ \t\n\x01 ♭";
  CHECK(holds(plan_json(plan), R"("title": "Dvořák \"№ 1\" \\ \t\n\u0001 ♭")"));
}

TEST_CASE("more than 36 cue starts make a list of dice tables") {
  Plan plan = sound_plan();
  std::vector<int> numbers(40);
  for (int at = 0; at < 40; ++at) numbers[at] = at + 1;
  plan.pieces[0].dice = dice_tables(numbers);
  const YamlNode read = tree(plan);
  CHECK(read.find("pieces")->items.at(0).find("dice")->items.size() == 2);
}

TEST_CASE("a misfit tells in JSON what has no place and what would help") {
  Plan plan = sound_plan();
  plan.fits = false;
  plan.unplaced = {{0, Drill::learn, {5, 8}, 8.5, Why::no_room_to_learn}};
  plan.remedies = {{"--minutes 22", 22}, {"--temper no", 0}};
  const YamlNode read = tree(plan);
  CHECK(read.find("fits")->text == "false");
  CHECK(keys(read) == Names{"format", "from", "by", "fits", "minutes_total", "pieces", "days",
                            "unplaced", "remedies", "spacing"});
  const YamlNode& work = read.find("unplaced")->items.at(0);
  CHECK(keys(work) == Names{"piece", "drill", "first", "last", "why", "minutes"});
  CHECK(holds(work.find("why")->text, "room left to learn"));
  CHECK(read.find("remedies")->items.at(0).find("say")->text == "--minutes 22");
}

TEST_CASE("JSON tells how late it gets when learning takes longer, where that was asked") {
  Plan plan = sound_plan();
  CHECK_FALSE(holds(plan_json(plan), "sensitivity"));
  plan.sensitivity = {{1.25, 0}, {1.5, std::nullopt}};
  const std::string json = plan_json(plan);
  CHECK(holds(json, R"("sensitivity": [{"learning": 1.25, "days_late": 0}, )"
                    R"({"learning": 1.5, "days_late": null}])"));
  const Names named = keys(tree(plan));
  CHECK(std::count(named.begin(), named.end(), "sensitivity") == 1);
}

TEST_CASE("each day stands on one line of JSON, and the same plan gives the same bytes") {
  const std::string json = plan_json(sound_plan());
  CHECK(json == plan_json(sound_plan()));
  std::size_t at = 0;
  int days_met = 0;
  while (at < json.size()) {
    const auto end = json.find('\n', at);
    const std::string line = json.substr(at, end - at);
    if (holds(line, "{\"date\": ")) {
      ++days_met;
      CHECK(std::count(line.begin(), line.end(), '{') == std::count(line.begin(), line.end(), '}'));
    }
    at = end + 1;
  }
  CHECK(days_met == 14);
}
