
#include "catch.h"
#include "piece/read_bars.h"
#include "piece/read_piece.h"

using namespace cahier;

namespace {

struct Reading {
  std::optional<Piece> piece;
  std::vector<Diagnostic> said;
};

Reading with(const std::string& lines, const std::string& bars = "bars: 48\n") {
  const Source source("study.yaml", "title: Study\n" + bars + lines);
  Diagnostics diagnostics;
  Reading reading;
  reading.piece = read_piece(source, diagnostics);
  reading.said = diagnostics.all();
  CHECK(reading.piece.has_value() == !diagnostics.has_errors());
  return reading;
}

std::string only_message(const Reading& reading) {
  REQUIRE(reading.said.size() == 1);
  return reading.said.front().message;
}

Reading sections(const std::string& list, const std::string& bars = "bars: 48\n") {
  return with("sections: [" + list + "]\n", bars);
}

}  // namespace

TEST_CASE("bars are written with a hyphen, an en dash or alone") {
  CHECK(parse_bars("1-16") == BarRange{1, 16});
  CHECK(parse_bars("1–16") == BarRange{1, 16});
  CHECK(parse_bars("1 - 16") == BarRange{1, 16});
  CHECK(parse_bars("17") == BarRange{17, 17});
  for (const char* text : {"", "-", "16-1", "1-", "-1", "1-2-3", "a", "1.5", "9999999", "1—2"}) {
    CAPTURE(text);
    CHECK_FALSE(parse_bars(text));
  }
  CHECK(bars_text({17, 20}) == "17–20");
  CHECK(bars_text({17, 17}) == "17");
}

TEST_CASE("bars that no section names form sections of their own, with a warning") {
  const Reading reading = sections("{name: A, bars: 5-16}, {name: B, bars: 18-40}");
  REQUIRE(reading.piece);
  REQUIRE(reading.said.size() == 3);
  CHECK(reading.said[0].severity == Diagnostic::Severity::warning);
  CHECK(reading.said[1].message == "bar 17 is in no section; it becomes a section of its own");
  std::vector<std::string> names;
  for (const Section& each : reading.piece->sections) names.push_back(each.name);
  CHECK(names == std::vector<std::string>{"1–4", "A", "17", "B", "41–48"});
}

TEST_CASE("the sections give the number of bars where nothing else does") {
  const Reading reading = sections("{name: A, bars: 1-16}, {name: B, bars: 17-20}", "");
  REQUIRE(reading.piece);
  CHECK(reading.piece->bars == 20);
  CHECK_FALSE(sections("{name: A, bars: 1-10001}", "").piece);
}

TEST_CASE("a pickup belongs to the first section unless one begins at bar 0") {
  const Reading joined = sections("{name: A, bars: 1-48}", "bars: 48\npickup: 1\n");
  REQUIRE(joined.piece);
  CHECK(joined.said.empty());
  CHECK(joined.piece->sections.at(0).bars == BarRange{0, 48});
  const Reading written =
      sections("{name: A, bars: 0-48, phrases: [1-8, 9-48]}", "bars: 48\npickup: 1\n");
  REQUIRE(written.piece);
  CHECK(written.piece->sections.at(0).phrases.at(0) == BarRange{0, 8});
  const Reading apart =
      sections("{name: Lead-in, bars: 0}, {name: A, bars: 1-48}", "bars: 48\npickup: 1\n");
  REQUIRE(apart.piece);
  CHECK(apart.piece->sections.at(0).bars == BarRange{0, 0});
  CHECK(apart.piece->sections.at(1).bars == BarRange{1, 48});
  CHECK_FALSE(sections("{name: A, bars: 0-48}").piece);
}

TEST_CASE("sections overlap, leave the piece or share a name only with an error") {
  CHECK(only_message(sections("{name: A, bars: 1-16}, {name: B, bars: 16-48}")) ==
        "section \"B\" (bars 16–48) overlaps section \"A\" (bars 1–16)");
  CHECK_FALSE(sections("{name: B, bars: 17-48}, {name: A, bars: 1-16}").piece);
  CHECK_FALSE(sections("{name: A, bars: 1-49}").piece);
  CHECK(only_message(sections("{name: A, bars: 1-16}, {name: A, bars: 17-48}")) ==
        "two sections are called \"A\"; the other is on line 3");
  CHECK_FALSE(sections("{bars: 1-48}").piece);
  CHECK_FALSE(sections("{name: A}").piece);
  CHECK_FALSE(sections("{name: " + std::string(61, 'x') + ", bars: 1-48}").piece);
  CHECK(sections("{name: " + std::string(60, 'x') + ", bars: 1-48}").piece);
}

TEST_CASE("phrases tile their section") {
  const auto phrases = [](const std::string& list) {
    return sections("{name: A, bars: 1-48, phrases: " + list + "}");
  };
  CHECK(phrases("[1-8, 9-48]").piece);
  CHECK(only_message(phrases("[1-8, 10-48]")) == "bar 9 is in no phrase of section \"A\"");
  CHECK(only_message(phrases("[1-8, 9-40]")) == "bars 41–48 are in no phrase of section \"A\"");
  CHECK(only_message(phrases("[1-8, 8-48]")) == "bar 8 of section \"A\" is in two phrases");
  CHECK_FALSE(phrases("[9-48, 1-8]").piece);
  CHECK_FALSE(phrases("[]").piece);
  CHECK_FALSE(phrases("0").piece);
  const Reading even = phrases("20");
  REQUIRE(even.piece);
  CHECK(even.piece->sections[0].phrases == std::vector<BarRange>{{1, 20}, {21, 40}, {41, 48}});
  CHECK_FALSE(
      sections("{name: A, bars: 1-16, phrases: [1-8, 9-17]}, {name: B, bars: 17-48}").piece);
}

TEST_CASE("a return has as many bars as its source and is learned elsewhere") {
  const auto returned = [](const std::string& source) {
    return sections("{name: A, bars: 1-20}, {name: B, bars: 21-30, same as: " + source +
                    "}, {name: C, bars: 31-48}");
  };
  CHECK(returned("1-10").piece);
  CHECK(returned("31-40").piece);
  CHECK(only_message(returned("1-12")) ==
        "\"B\" has 10 bars (21–30), but \"same as\" names 12 (1–12)");
  CHECK_FALSE(returned("15-24").piece);
  CHECK_FALSE(returned("21-30").piece);
  CHECK_FALSE(returned("45-54").piece);
}

TEST_CASE("a return may span several sections, and a return of a return is followed") {
  const Reading reading = sections(
      "{name: A, bars: 1-8}, {name: B, bars: 9-16}, {name: C, bars: 17-32, same as: 1-16}, "
      "{name: D, bars: 33-40, same as: 25-32}, {name: E, bars: 41-48}");
  REQUIRE(reading.piece);
  CHECK(reading.piece->learned_bar(33) == 9);
}

TEST_CASE("a circle of returns is an error that names its sections") {
  const Reading reading = sections(
      "{name: A, bars: 1-8}, {name: B, bars: 9-16, same as: 17-24}, "
      "{name: C, bars: 17-24, same as: 25-32}, {name: D, bars: 25-32, same as: 9-16}, "
      "{name: E, bars: 33-48}");
  CHECK_THAT(only_message(reading), Catch::Contains("circle through \"B\", \"C\", \"D\""));
}

TEST_CASE("a circle through only some bars of a return is found") {
  CHECK_FALSE(sections("{name: A, bars: 1-8, same as: 13-20}, {name: B, bars: 9-16, same as: 1-8}, "
                       "{name: C, bars: 17-48}")
                  .piece == std::nullopt);
  CHECK_FALSE(sections("{name: A, bars: 1-8, same as: 9-16}, {name: B, bars: 9-12, same as: 5-8}, "
                       "{name: C, bars: 13-16, same as: 9-12}, {name: D, bars: 17-48}")
                  .piece);
}

TEST_CASE("a return cannot include the pickup") {
  const std::string pickup = "bars: 48\npickup: 1\n";
  CHECK(only_message(sections("{name: A, bars: 1-16, same as: 17-32}, {name: B, bars: 17-48}",
                              pickup)) == "a return cannot include the pickup, bar 0");
  CHECK_FALSE(
      sections("{name: A, bars: 1-16}, {name: B, bars: 17-48, same as: 0-31}", pickup).piece);
}

TEST_CASE("look-alikes have passages apart and a fork in each") {
  CHECK(with("look-alikes: [{bars: [9-16, 41-48], fork: [13, 45]}]\n").said.empty());
  for (const char* bad :
       {"{bars: [9-16], fork: [13]}", "{bars: [9-16, 41-48], fork: [13]}",
        "{bars: [9-16, 41-48], fork: [13, 40]}", "{bars: [9-16, 12-20], fork: [13, 16]}",
        "{bars: [9-16, 41-48]}", "{fork: [13, 45]}", "{bars: [9-16, 41-49], fork: [13, 45]}"}) {
    CAPTURE(bad);
    CHECK_FALSE(with(std::string("look-alikes: [") + bad + "]\n").piece);
  }
  const Reading uneven = with("look-alikes: [{bars: [9-16, 41-48], fork: [13, 46]}]\n");
  CHECK(uneven.piece);
  CHECK(uneven.said.size() == 1);
}

TEST_CASE("repeats may nest but not cross, and end somewhere") {
  CHECK(with("repeats: [{bars: 1-16, times: 2}, {bars: 5-8, times: 3}]\n").piece);
  CHECK(with("repeats: [{bars: 5-8, times: 2}, {bars: 9-12, times: 99}]\n").piece);
  CHECK(only_message(with("repeats: [{bars: 1-16, times: 2}, {bars: 10-20, times: 2}]\n")) ==
        "the repeats of bars 1–16 and 10–20 cross");
  for (const char* bad : {"{bars: 1-16}", "{bars: 1-16, times: 1}", "{bars: 1-16, times: 100}",
                          "{bars: 1-16, times: 2}, {bars: 1-16, times: 2}",
                          "{bars: 1-48, times: 99}, {bars: 1-40, times: 99}"}) {
    CAPTURE(bad);
    CHECK_FALSE(with(std::string("repeats: [") + bad + "]\n").piece);
  }
}

TEST_CASE("at most 100,000 bars are played") {
  const std::string thousand = "bars: 1000\n";
  CHECK(with("repeats: [{bars: 1-1000, times: 50}, {bars: 1-1000, times: 2}]\n", thousand).piece ==
        std::nullopt);
  CHECK(with("repeats: [{bars: 1-1000, times: 99}, {bars: 1-10, times: 2}]\n", thousand).piece);
  CHECK_FALSE(
      with("repeats: [{bars: 1-1000, times: 99}, {bars: 1-11, times: 2}]\n", thousand).piece);
}

TEST_CASE("hard bars, marks and cues name bars of the piece") {
  for (const char* bad :
       {"hard: [{bars: 21-24}]", "hard: [{bars: 21-49, level: 3}]", "hard: [{level: 3}]",
        "marks: [{bar: 17}]", "marks: [{bar: 49, note: x}]", "marks: [{bar: 0, note: x}]",
        "cues: [0]", "cues: [49]", "cues: [1, 1]", "cues: [1-2]", "cues: [[1]]"}) {
    CAPTURE(bad);
    CHECK_FALSE(with(std::string(bad) + "\n").piece);
  }
  CHECK_FALSE(with("marks: [{bar: 1, note: " + std::string(201, 'x') + "}]\n").piece);
  CHECK(with("cues: 17\n").piece);
  CHECK(with("pickup: 1\ncues: [0]\n").piece);
}
