#include "text/words.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "catch.h"
#include "drill_keys.h"
#include "paths.h"
#include "text/templates.h"

using namespace cahier;

namespace {

// Groups whose keys the program composes at run time from the word of a reason, a note, a cause or
// a shortfall, and so does not name one by one.
const std::vector<std::string> kComposed = {"gave_way.", "notes.", "reasons.", "teacher_asks.",
                                            "why."};

std::string english_text() {
  for (const BuiltIn& one : built_in_templates())
    if (one.name == "words/en.yaml") return std::string(one.text);
  return {};
}

std::string replaced(std::string text, const std::string& what, const std::string& with) {
  const auto at = text.find(what);
  REQUIRE(at != std::string::npos);
  return text.replace(at, what.size(), with);
}

std::vector<Diagnostic> problems(const std::string& text) {
  Diagnostics diagnostics;
  read_words(Source("words/xx.yaml", text), diagnostics);
  for (const auto& one : diagnostics.all()) UNSCOPED_INFO(compose(one));
  return diagnostics.all();
}

// Everything in src, without line ends, so that a key may stand on a line of its own.
std::string all_sources() {
  std::string all;
  for (const auto& file : std::filesystem::recursive_directory_iterator(SOURCES)) {
    if (file.path().extension() != ".cpp" && file.path().extension() != ".h") continue;
    std::ifstream in(file.path());
    std::stringstream text;
    text << in.rdbuf();
    all += text.str();
  }
  return all;
}

bool is_key(const std::string& text) {
  return std::count(text.begin(), text.end(), '.') == 1 &&
         text.find_first_not_of("abcdefghijklmnopqrstuvwxyz_.") == std::string::npos;
}

// Every "group.key" in quotes that follows `before` (and white space) in the sources.
std::set<std::string> keys_after(const std::string& text, const std::string& before) {
  std::set<std::string> found;
  for (auto at = text.find(before); at != std::string::npos; at = text.find(before, at + 1)) {
    const auto quote = text.find_first_not_of(" \n", at + before.size());
    if (quote == std::string::npos || text[quote] != '"') continue;
    const std::string key = text.substr(quote + 1, text.find('"', quote + 1) - quote - 1);
    if (is_key(key)) found.insert(key);
  }
  return found;
}

// Every "group.key" in quotes.
std::set<std::string> quoted_keys(const std::string& text) {
  std::set<std::string> found;
  for (auto at = text.find('"'); at != std::string::npos; at = text.find('"', at + 1)) {
    const std::string key = text.substr(at + 1, text.find('"', at + 1) - at - 1);
    if (is_key(key)) found.insert(key);
  }
  return found;
}

}  // namespace

TEST_CASE("a sentence is said with its values filled in") {
  const Words& words = english_words();
  CHECK(words.say("dates.day_month", {{"day", 4}, {"month", "January"}}) == "4 January");
  CHECK(words.say("drills.learn", {{"bars", "1–4"}, {"unused", "x"}}) == "learn 1–4");
  CHECK(words.count("plan.weeks", 1) == "1 week");
  CHECK(words.count("plan.weeks", 11) == "11 weeks");
  CHECK(words.count("plan.weeks", 0) == "0 weeks");
  CHECK(words.list("weekdays.short").size() == 7);
}

TEST_CASE("an unknown key and a missing value are faults of the program") {
  const Words& words = english_words();
  CHECK_THROWS_AS(words.say("plan.no_such_words"), std::logic_error);
  CHECK_THROWS_AS(words.say("drills.learn"), std::logic_error);
  CHECK_THROWS_AS(words.say("weekdays.short"), std::logic_error);
  CHECK_THROWS_AS(words.list("drills.learn"), std::logic_error);
}

TEST_CASE("the English words pass as a language of their own") {
  CHECK(problems(english_text()).empty());
}

TEST_CASE("a language may move or leave out a placeholder but not invent one") {
  const std::string text = english_text();
  CHECK(problems(replaced(text, "\"{day} {month}\"", "\"{month} {day}.\"")).empty());
  CHECK(problems(replaced(text, "\"learn {bars}\"", "lernen")).empty());
  const auto invented = problems(replaced(text, "\"learn {bars}\"", "\"lernen {bar}\""));
  REQUIRE(invented.size() == 1);
  CHECK(invented[0].message.find("{bar}") != std::string::npos);
  CHECK(invented[0].message.find("did you mean \"bars\"") != std::string::npos);
  CHECK(problems(replaced(text, "\"learn {bars}\"", "\"learn {bars\"")).size() == 1);
  CHECK(problems(replaced(text, "\"learn {bars}\"", "\"learn }\"")).size() == 1);
}

TEST_CASE("a missing and an unknown key are named with their place and the nearest key") {
  const auto found = problems(replaced(english_text(), "\n  learn:", "\n  lern:"));
  REQUIRE(found.size() == 2);
  CHECK(found[0].message.find("did you mean \"drills.learn\"") != std::string::npos);
  CHECK(found[0].at.line > 1);
  CHECK(found[1].message.find("missing key \"drills.learn\"") != std::string::npos);
}

TEST_CASE("an empty, overlong or wrongly shaped text is refused") {
  const std::string text = english_text();
  const std::string learn = "\"learn {bars}\"";
  CHECK(problems(replaced(text, learn, "\"\"")).size() == 1);
  CHECK(problems(replaced(text, learn, "\" \"")).size() == 1);
  CHECK(problems(replaced(text, learn, "[a, b]")).size() == 1);
  CHECK(problems(replaced(text, learn, "\"" + std::string(2000, 'a') + "\"")).empty());
  CHECK(problems(replaced(text, learn, "\"" + std::string(2001, 'a') + "\"")).size() == 1);
  CHECK(problems(replaced(text, "Saturday, Sunday]", "Saturday]")).size() == 1);
  CHECK_FALSE(problems("just a sentence\n").empty());
  CHECK_FALSE(problems("plan: text\n").empty());
}

TEST_CASE("every key that the program says exists in English") {
  const std::string sources = all_sources();
  const auto keys = english_words().keys();
  const std::set<std::string> known(keys.begin(), keys.end());
  auto said = keys_after(sources, "say(");
  said.merge(keys_after(sources, "list("));
  const auto counted = keys_after(sources, "count(");
  CHECK(said.size() > 20);
  for (const std::string& key : said) {
    INFO(key);
    CHECK(known.count(key) == 1);
  }
  for (const std::string& key : counted) {
    INFO(key);
    CHECK(known.count(key + "_one") == 1);
    CHECK(known.count(key + "_other") == 1);
  }
}

TEST_CASE("every English key is said somewhere in the program") {
  auto named = quoted_keys(all_sources());
  for (const DrillFacts& facts : every_drill()) named.merge(sample::keys_of(facts));
  for (const std::string& key : english_words().keys()) {
    bool used = named.count(key) > 0;
    for (const char* end : {"_one", "_other"})
      if (key.ends_with(end))
        used = used || named.count(key.substr(0, key.size() - std::string(end).size())) > 0;
    for (const std::string& group : kComposed) used = used || key.starts_with(group);
    INFO(key);
    CHECK(used);
  }
}

TEST_CASE("the tag of a language is well formed") {
  const auto tagged = [](const std::string& tag) {
    return replaced(english_text(), "language: en", "language: \"" + tag + "\"");
  };
  for (const char* tag : {"en", "de-AT", "sr-Latn", "zh-cmn-Hans-CN", "de-1996", "de-CH-x-zh",
                          "x-a", "en-a-bbb-x-a", "es-419"})
    CHECK(problems(tagged(tag)).empty());
  for (const char* tag : {"klingon forever", "e", "en-", "-en", "en_GB", "en--GB", "abcdefghi",
                          "12", "de-419-DE", "en-a", "en-x", "en-GB-verylongvariant"})
    CHECK(problems(tagged(tag)).size() == 1);
  // Well formed, but sixty letters are the most: "en-x" and seven times eight, then one more.
  std::string longest = "en-x";
  for (int part = 0; part < 7; ++part) longest += "-bcdefgh";
  REQUIRE(longest.size() == 60);
  CHECK(problems(tagged(longest)).empty());
  CHECK(problems(tagged(longest + "a")).size() == 1);
}
