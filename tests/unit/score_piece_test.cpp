// A score becomes a piece file.

#include <map>
#include <random>

#include "catch.h"
#include "import/write_piece.h"
#include "piece/read_piece.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

const std::string kForward = "<barline location=\"left\"><repeat direction=\"forward\"/></barline>";
const std::string kBack = "<barline location=\"right\"><repeat direction=\"backward\"/></barline>";
const std::string kDouble =
    "<barline location=\"right\"><bar-style>light-light</bar-style></barline>";

std::string rehearsal(const std::string& name) {
  return "<direction><direction-type><rehearsal>" + name +
         "</rehearsal></direction-type></direction>";
}

// Bars of a whole note each, no two alike where `row` does not say so by the same letter; the signs
// of a bar before its note.
Score score_of(const std::string& row, const std::map<std::size_t, std::string>& signs = {}) {
  std::string measures;
  for (std::size_t at = 0; at < row.size(); ++at) {
    const int value = row[at] - 'A';
    const std::string name =
        std::string(1, static_cast<char>('A' + value % 7)) + std::to_string(1 + value / 7);
    const auto sign = signs.find(at);
    measures += measure(
        std::to_string(at + 1),
        (at == 0 ? attributes() : "") + (sign == signs.end() ? "" : sign->second) + note(name, 4));
  }
  return read(piano(measures));
}

// The written piece, which must be one that is read without an error.
Piece piece_of(const Score& score) {
  const std::string text = write_piece(score);
  CAPTURE(text);
  Diagnostics diagnostics;
  const auto piece = read_piece(Source("piece.yaml", text), diagnostics);
  for (const Diagnostic& one : diagnostics.all()) {
    CAPTURE(one.message, one.at.line);
    CHECK(one.severity != Diagnostic::Severity::error);
  }
  REQUIRE(piece);
  return *piece;
}

std::string sections_of(const Piece& piece) {
  std::string text;
  for (const Section& one : piece.sections) {
    text +=
        fmt::format("{}{}:{}-{}", text.empty() ? "" : " ", one.name, one.bars.first, one.bars.last);
    if (one.same_as) text += fmt::format("={}-{}", one.same_as->first, one.same_as->last);
  }
  return text;
}

std::string repeats_of(const Piece& piece) {
  std::string text;
  for (const Repeat& one : piece.repeats) {
    text += fmt::format("{}{}-{}x{}", text.empty() ? "" : " ", one.bars.first, one.bars.last,
                        one.times);
    for (const Ending& ending : one.endings) {
      text += fmt::format("[{}-{}:", ending.bars.first, ending.bars.last);
      for (const int time : ending.times) text += std::to_string(time);
      text += "]";
    }
  }
  return text;
}

const std::string kSixteen = "ABCDEFGHIJKLMNOP";

}  // namespace

TEST_CASE("a piece file has the score's title, bars, pickup, meter, key and tempo") {
  const Piece piece = piece_of(read(partwise(
      {{"P1", "Harpsichord",
        measure("0", attributes("6/8", "-1", 2, 2) + "<sound tempo=\"90\"/>" + note("C4", 1),
                "implicit=\"yes\"") +
            measure("1", note("C4", 6)) + measure("2", note("C4", 6))}},
      "<movement-title>Lamp \"small\"\n&lt;i&gt;light&lt;/i&gt;</movement-title><identification>"
      "<creator type=\"composer\">Nobody</creator></identification>")));
  CHECK(piece.title == "Lamp \"small\" light");
  CHECK(piece.composer == "Nobody");
  CHECK(piece.instrument.name == "harpsichord");
  CHECK(piece.bars == 2);
  CHECK(piece.pickup == 1);
  CHECK(piece.meter.text() == "6/8");
  CHECK(piece.key->text == "1 flat");
  CHECK(piece.tempo->per_minute == 60);
  CHECK(piece.tempo->beat == Beat::dotted_quarter);
}

TEST_CASE("what the score does not say is not in the piece file") {
  const std::string text = write_piece(read(
      piano(measure("1", "<attributes><divisions>1</divisions></attributes>" + note("C4", 4)))));
  for (const char* key :
       {"\nkey:", "\nmeter:", "\ntempo:", "\ncomposer:", "\nsections:", "\nrepeats:"})
    CHECK(text.find(key) == std::string::npos);
  CHECK_THAT(text, Catch::StartsWith("# From a.musicxml, by cahier import:"));
  CHECK_THAT(text, Catch::Contains("# tempo: 96"));
}

TEST_CASE("a mode is written where the score gives one") {
  const auto key = [](const std::string& inside) {
    return piece_of(read(piano(measure("1", "<attributes><divisions>1</divisions><key>" + inside +
                                                "</key></attributes>" + note("C4", 4)))))
        .key->text;
  };
  CHECK(key("<fifths>-3</fifths><mode>minor</mode>") == "C minor");
  CHECK(key("<fifths>-2</fifths><mode>major</mode>") == "B♭ major");
  CHECK(key("<fifths>7</fifths><mode>minor</mode>") == "A♯ minor");
  CHECK(key("<fifths>-3</fifths>") == "3 flats");
  CHECK(key("<fifths>0</fifths><mode>dorian</mode>") == "no sharps or flats");
}

TEST_CASE("changes of meter, key and tempo stand at their bars") {
  const std::string change =
      "<attributes><key><fifths>2</fifths></key><time><beats>3</beats>"
      "<beat-type>4</beat-type></time></attributes><sound tempo=\"80\"/>";
  const Piece piece = piece_of(read(
      piano(measure("1", attributes() + note("C4", 4)) + measure("2", change + note("C4", 3)))));
  REQUIRE(piece.changes.size() == 1);
  CHECK(piece.changes[0].bar == 2);
  CHECK(piece.changes[0].meter->text() == "3/4");
  CHECK(piece.changes[0].key->text == "2 sharps");
  CHECK(piece.changes[0].tempo->per_minute == 80);
}

TEST_CASE("sections begin at rehearsal marks, after double bars, at repeats, new keys and meters") {
  CHECK(sections_of(piece_of(score_of(kSixteen))).empty());
  CHECK(sections_of(piece_of(score_of(kSixteen, {{0, rehearsal("Intro")}, {8, rehearsal("B")}}))) ==
        "Intro:1-8 B:9-16");
  CHECK(sections_of(piece_of(score_of(kSixteen, {{7, kDouble}}))) == "A:1-8 B:9-16");
  CHECK(sections_of(piece_of(score_of(kSixteen, {{4, kForward}, {11, kBack}}))) ==
        "A:1-4 B:5-12 C:13-16");
  const std::string key = "<attributes><key><fifths>2</fifths></key></attributes>";
  const std::string meter =
      "<attributes><time><beats>5</beats><beat-type>4</beat-type></time></attributes>";
  CHECK(sections_of(piece_of(score_of(kSixteen, {{8, key}}))) == "A:1-8 B:9-16");
  CHECK(sections_of(piece_of(score_of(kSixteen, {{8, meter}}))) == "A:1-8 B:9-16");
  // Near one another, the stronger mark counts.
  CHECK(sections_of(piece_of(score_of(kSixteen, {{7, key}, {9, rehearsal("Z")}}))) ==
        "A:1-9 Z:10-16");
  CHECK(sections_of(piece_of(score_of(kSixteen, {{7, meter}, {9, key}}))) == "A:1-9 B:10-16");
}

TEST_CASE("a rehearsal mark begins a section, however short the one before") {
  CHECK(sections_of(piece_of(score_of(
            kSixteen, {{0, rehearsal("A")}, {8, rehearsal("B")}, {10, rehearsal("Coda")}}))) ==
        "A:1-8 B:9-10 Coda:11-16");
}

TEST_CASE("what a return lacks of its section is its end, and what comes then is not") {
  CHECK(sections_of(piece_of(score_of("ABCDEFGHIJKLABCDEFXY", {{7, kDouble}}))) ==
        "A:1-8 B:9-12 A again:13-18=1-6 A again, end:19-20");
  CHECK(sections_of(piece_of(score_of("ABCDEFGHIJKLABCDEFXYZ", {{7, kDouble}}))) ==
        "A:1-8 B:9-12 A again:13-18=1-6 C:19-21");
}

TEST_CASE("a long exact return is a section that is the same as its source") {
  CHECK(sections_of(piece_of(score_of("ABCDEFGHIJABCDKL"))) ==
        "A:1-4 B:5-10 A again:11-14=1-4 C:15-16");
  CHECK(sections_of(piece_of(score_of("ABCDEFGHABCDEFGH", {{7, kDouble}}))) ==
        "A:1-8 A again:9-16=1-8");
  // Three bars are no section.
  CHECK(sections_of(piece_of(score_of("ABCDEFGHIJABCKLM"))).empty());
}

TEST_CASE("a return that begins like the pickup begins after it") {
  const auto theme = [](int number) {
    std::string bars;
    for (const char* name : {"C4", "D4", "E4", "F4"})
      bars += measure(std::to_string(number++), note(name, 4));
    return bars;
  };
  const Piece piece = piece_of(read(piano(
      measure("0", attributes() + note("G4", 1), "implicit=\"yes\"") + theme(1) +
      measure("X1", note("G4", 1), "implicit=\"yes\"") + theme(5) + measure("9", note("A4", 4)))));
  CHECK(sections_of(piece) == "A:0-5 A again:6-9=1-4 A again, end:10-10");
}

TEST_CASE("repeats and endings stand in the piece file as far as it can have them") {
  const auto written = [](const std::map<std::size_t, std::string>& signs) {
    return repeats_of(piece_of(score_of(kSixteen, signs)));
  };
  CHECK(written({{4, kForward}, {11, kBack}}) == "5-12x2");
  CHECK(written({{6, ending("1", kBack)}, {7, ending("2")}}) == "1-7x2[7-7:1][8-8:2]");
  CHECK(written({{6, ending("1", kBack)}}) == "1-7x2[7-7:1][8-8:2]");
  CHECK(written({{6, ending("1", kBack)}, {7, kForward}, {11, kBack}}) == "1-7x2 8-12x2");
  CHECK(written({{0, ending("1", kBack)}, {1, ending("2")}}) == "1-1x2");
  CHECK(written({{6, ending("1, 2", kBack)}, {7, ending("3")}}) == "1-7x3[7-7:12][8-8:3]");
}

TEST_CASE("jumps, which a piece file cannot play, are marks to remember") {
  const Piece piece = piece_of(score_of(
      kSixteen,
      {{4, sound("segno=\"a\"")}, {7, sound("fine=\"yes\"")}, {15, sound("dalsegno=\"a\"")}}));
  REQUIRE(piece.marks.size() == 3);
  CHECK(piece.marks[0].note == "segno");
  CHECK(piece.marks[1].note == "Fine, after the jump");
  CHECK(piece.marks[2].bar == 16);
}

TEST_CASE("look-alikes are written with the bars around their fork") {
  const Piece piece = piece_of(score_of("ABCDEFABCDGHIJKL"));
  REQUIRE(piece.look_alikes.size() == 0);  // the end of a return, which is a fork by itself
  const Piece short_one = piece_of(score_of("ABCDEFGHABCIJKLM"));
  REQUIRE(short_one.look_alikes.size() == 1);
  CHECK(short_one.look_alikes[0].passages == std::vector<BarRange>{{1, 4}, {9, 12}});
  CHECK(short_one.look_alikes[0].forks == std::vector<int>{4, 12});
}

TEST_CASE("a piece file of any score is read without an error") {
  std::mt19937 chance(11);
  const std::vector<std::string> kinds = {
      kForward,
      kBack,
      kDouble,
      ending("1", kBack),
      ending("2"),
      ending("1, 2", kBack),
      ending("3", kBack),
      ending(""),
      ending("2", kForward),
      rehearsal("A"),
      rehearsal("\"{#"),
      sound("dacapo=\"yes\""),
      sound("dalsegno=\"\""),
      sound("segno=\"\""),
      sound("fine=\"yes\""),
      sound("tocoda=\"\""),
      sound("coda=\"\""),
      sound("tempo=\"70\""),
      "<attributes><key><fifths>3</fifths></key></attributes>",
      "<attributes><time><beats>2</beats><beat-type>4</beat-type><beats>3</beats>"
      "<beat-type>8</beat-type></time></attributes>",
      "<attributes><time><beats>3</beats><beat-type>128</beat-type></time></attributes>",
      "<attributes><time><senza-misura/></time></attributes>"};
  for (int round = 0; round < 1500; ++round) {
    std::string row(1 + chance() % 20, 'A');
    for (char& letter : row) letter = static_cast<char>('A' + chance() % 5);
    std::string measures;
    for (std::size_t at = 0; at < row.size(); ++at) {
      std::string content = at == 0 ? attributes() : "";
      while (chance() % 3 == 0) content += kinds[chance() % kinds.size()];
      const int length = chance() % 5 == 0 ? 1 : 4;
      measures += measure(chance() % 8 == 0 ? "X1" : std::to_string(at + chance() % 2),
                          content + note(std::string(1, row[at]) + "4", length),
                          chance() % 6 == 0 ? "implicit=\"yes\"" : "");
    }
    CAPTURE(measures);
    piece_of(read(piano(measures)));
  }
}
