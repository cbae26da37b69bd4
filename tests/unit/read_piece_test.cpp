#include "piece/read_piece.h"

#include "catch.h"

using namespace cahier;

namespace {

struct Reading {
  std::optional<Piece> piece;
  std::vector<Diagnostic> said;
  std::string text;
};

Reading read(std::string yaml) {
  const Source source("study.yaml", std::move(yaml));
  Diagnostics diagnostics;
  Reading reading;
  reading.piece = read_piece(source, diagnostics);
  reading.said = diagnostics.all();
  for (const Diagnostic& each : reading.said) reading.text += compose(each);
  CHECK(reading.piece.has_value() == !diagnostics.has_errors());
  return reading;
}

// A piece of 48 bars with `lines` added.
Reading with(const std::string& lines) { return read("title: Study\nbars: 48\n" + lines); }

std::string only_message(const Reading& reading) {
  INFO(reading.text);
  CHECK(reading.said.size() == 1);
  return reading.said.empty() ? "" : reading.said.front().message;
}

}  // namespace

TEST_CASE("five lines are a piece") {
  const Reading reading =
      read("title: Lantern Study\nbars: 48\nmeter: 6/8\ntempo: 60\nkey: A minor\n");
  INFO(reading.text);
  REQUIRE(reading.piece);
  CHECK(reading.piece->title == "Lantern Study");
  CHECK(reading.piece->bars == 48);
  CHECK(reading.piece->tempo == Tempo{60, Beat::dotted_quarter});
  CHECK(reading.piece->key == Key{0, "A minor"});
  CHECK(reading.piece->parts() == std::vector<std::string>{"right hand", "left hand"});
  CHECK(reading.piece->level == 2);
  CHECK(reading.piece->sections.empty());
  CHECK(reading.said.empty());
}

TEST_CASE("every key of a piece file arrives in the piece") {
  const Reading reading = read(R"(title: Lantern Study
composer: Nobody Real
instrument: organ
parts: [manual, "pedals"]
bars: 48
pickup: 0.5
meter: 3/4
key: B flat major
tempo: 132
beat: half
level: 3
changes:
  - {bar: 25, meter: 2/4, key: A major, tempo: 96}
sections:
  - {name: A, bars: 1-16, phrases: [1-8, 9-16]}
  - {name: B, bars: 17-32, level: 4}
  - {name: A again, bars: 33–44, same as: 1-12}
  - {name: Close, bars: 45-48, phrases: 3}
hard: [{bars: 21-24, level: 5}]
look-alikes: [{bars: [41-48, 9-16], fork: [45, 13]}]
repeats: [{bars: 1-16, times: 2}]
marks: [{bar: 17, note: "new manual"}]
cues: [1, 17, 29]
fingering: not yet
practice:
  minutes: {mon: 15, sat: 30.5, sun: 0}
  blocks: 2
  days off: [sun, 2027-02-14, 2027-02-20..2027-02-23]
  lesson: thu
  order: hardest first
  new to performing: yes
  temper: weak bars only
)");
  INFO(reading.text);
  REQUIRE(reading.piece);
  CHECK(reading.said.empty());
  const Piece& piece = *reading.piece;
  CHECK(piece.composer == "Nobody Real");
  CHECK(piece.parts() == std::vector<std::string>{"manual", "pedals"});
  CHECK(piece.instrument.staves.size() == 3);
  CHECK(piece.pickup == 0.5);
  CHECK(piece.key->fifths == -2);
  CHECK(piece.tempo == Tempo{132, Beat::half});
  CHECK(piece.level == 3);
  REQUIRE(piece.changes.size() == 1);
  CHECK(piece.changes[0].meter->text() == "2/4");
  CHECK(piece.changes[0].key->fifths == 3);
  CHECK(piece.changes[0].tempo->per_minute == 96);
  REQUIRE(piece.sections.size() == 4);
  CHECK(piece.sections[0].bars == BarRange{0, 16});
  CHECK(piece.sections[0].phrases == std::vector<BarRange>{{0, 8}, {9, 16}});
  CHECK(piece.sections[1].level == 4);
  CHECK(piece.sections[2].bars == BarRange{33, 44});
  CHECK(piece.sections[2].same_as == BarRange{1, 12});
  CHECK(piece.sections[3].phrases == std::vector<BarRange>{{45, 47}, {48, 48}});
  CHECK(piece.level_at(22) == 5);
  REQUIRE(piece.look_alikes.size() == 1);
  CHECK(piece.look_alikes[0].passages == std::vector<BarRange>{{9, 16}, {41, 48}});
  CHECK(piece.look_alikes[0].forks == std::vector<int>{13, 45});
  CHECK(piece.repeats.at(0).times == 2);
  CHECK(piece.marks.at(0).note == "new manual");
  CHECK(piece.cues == std::vector<int>{1, 17, 29});
  CHECK(piece.fingering == Fingering::not_yet);
  CHECK(piece.practice.minutes == WeekMinutes{15, 0, 0, 0, 0, 30.5, 0});
  CHECK(piece.practice.blocks == 2);
  CHECK(piece.practice.days_off->weekdays[6]);
  CHECK(piece.practice.days_off->dates.size() == 2);
  CHECK(piece.practice.lesson == 3);
  CHECK(piece.practice.order == Order::hardest_first);
  CHECK(piece.practice.new_to_performing == true);
  CHECK(piece.practice.temper == Temper::weak);
}

TEST_CASE("what is missing is asked for") {
  CHECK(only_message(read("bars: 4\n")) == "\"title\" is missing");
  CHECK(only_message(read("title: A\n")) == "\"bars\" is missing");
  CHECK(only_message(read("title: A\nsections: []\n")) == "\"bars\" is missing");
}

TEST_CASE("every fault of a file is named in one run, in the order of the file") {
  const Reading reading = with(
      "meter: C\nkey: H minor\ntempo: 9\ninstrument: paino\nlevel: 6\nlevle: 1\ncues: [99]\n"
      "practice:\n  blocks: 9\n  lesson: thursday\n");
  INFO(reading.text);
  REQUIRE(reading.said.size() == 9);
  for (std::size_t index = 1; index < reading.said.size(); ++index) {
    CHECK(reading.said[index - 1].at.line < reading.said[index].at.line);
  }
  CHECK_THAT(reading.said[3].message, Catch::Contains("did you mean \"piano\"?"));
  CHECK_THAT(reading.said[5].message, Catch::Contains("did you mean \"level\"?"));
  CHECK_THAT(reading.said[8].message, Catch::Contains("did you mean \"thu\"?"));
  CHECK(reading.said[8].chain == std::vector<std::string>{"while reading \"practice\""});
}

TEST_CASE("a score line is known; who joins the score reads it before") {
  const Reading reading = with("score: a.musicxml\n");
  CHECK(reading.piece);
  CHECK(reading.said.empty());
}

TEST_CASE("texts are short, visible and on one line") {
  CHECK(only_message(read("bars: 4\ntitle: " + std::string(501, 'x'))) ==
        "\"title\" is 501 characters long; at most 500 fit");
  std::string wide;
  for (int count = 0; count < 500; ++count) wide += "ř";
  CHECK(read("bars: 4\ntitle: " + wide).piece);
  CHECK_FALSE(read("bars: 4\ntitle: " + std::string(1000000, 'x')).piece);
  CHECK_FALSE(read("bars: 4\ntitle: \"a\\x1bb\"\n").piece);
  CHECK_FALSE(read("bars: 4\ntitle: \"a\\u202eb\"\n").piece);
  CHECK_FALSE(read("bars: 4\ntitle: |\n  a\n  b\n").piece);
  CHECK_FALSE(read("bars: 4\ntitle: [a]\n").piece);
}

TEST_CASE("numbers have limits") {
  for (const char* good : {"title: A\nbars: 1\n", "title: A\nbars: 10000\n"})
    CHECK(read(good).piece);
  for (const char* bad : {"bars: 0", "bars: 10001", "bars: -4", "bars: 4.5", "bars: '4'",
                          "bars: four", "bars: [4]"}) {
    CAPTURE(bad);
    CHECK_FALSE(read(std::string("title: A\n") + bad + "\n").piece);
  }
  for (const char* bad :
       {"level: 0", "level: 6", "tempo: 9.9", "tempo: 401", "tempo: .inf", "meter: 3/4\npickup: 3",
        "pickup: 0", "pickup: -1", "pickup: 4", "beat: quarter", "tempo: 60\nbeat: crotchet",
        "parts: []", "parts: [a, a]", "parts: [a, b, c, d, e]", "parts: ['']",
        "fingering: maybe"}) {
    CAPTURE(bad);
    CHECK_FALSE(with(std::string(bad) + "\n").piece);
  }
  CHECK(with("meter: 3/4\npickup: 2.5\n").piece);
}

TEST_CASE("changes come in bar order, inside the piece, and change something") {
  CHECK_FALSE(with("changes: [{bar: 49, meter: 2/4}]\n").piece);
  CHECK_FALSE(with("changes: [{bar: 9, meter: 2/4}, {bar: 9, key: A major}]\n").piece);
  CHECK_FALSE(with("changes: [{bar: 9, meter: 2/4}, {bar: 5, key: A major}]\n").piece);
  CHECK_FALSE(with("changes: [{meter: 2/4}]\n").piece);
  CHECK(only_message(with("changes: [{bar: 9}]\n")) == "this change changes nothing");
}

TEST_CASE("a new meter alone keeps the tempo's beat, a new tempo beside it takes the meter's") {
  const Reading alone = with("tempo: 60\nchanges: [{bar: 9, meter: 6/8}, {bar: 17, tempo: 80}]\n");
  REQUIRE(alone.piece);
  CHECK(alone.piece->tempo_at(9) == Tempo{60, Beat::quarter});
  CHECK(alone.piece->tempo_at(17) == Tempo{80, Beat::quarter});
  const Reading beside = with("tempo: 60\nchanges: [{bar: 9, meter: 6/8, tempo: 50}]\n");
  REQUIRE(beside.piece);
  CHECK(beside.piece->tempo_at(9) == Tempo{50, Beat::dotted_quarter});
}

TEST_CASE("practice wishes are checked") {
  for (const char* bad :
       {"minutes: 0", "minutes: 481", "minutes: {mon: 0}", "minutes: {mon: 15, sta: 3}",
        "minutes: {mon: -1}", "blocks: 0", "blocks: 7", "days off: [2027-02-30]",
        "days off: 2027-02-23..2027-02-20", "lesson: 2027-02-20", "order: sideways",
        "new to performing: perhaps", "temper: maybe", "mintues: 4"}) {
    CAPTURE(bad);
    CHECK_FALSE(with(std::string("practice:\n  ") + bad + "\n").piece);
  }
  const Reading single = with("practice: {minutes: 15, days off: sun, temper: no}\n");
  REQUIRE(single.piece);
  CHECK(single.piece->practice.days_off->weekdays[6]);
  CHECK(single.piece->practice.temper == Temper::no);
  CHECK(single.piece->practice.minutes->at(3) == 15);
  CHECK_FALSE(single.piece->practice.order);
}
