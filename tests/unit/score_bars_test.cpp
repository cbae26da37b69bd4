// Measure elements become bars; meters, keys, tempi and hands.

#include "catch.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

std::vector<std::string> printed(const Score& score) {
  std::vector<std::string> numbers;
  for (const ScoreBar& bar : score.bars) numbers.push_back(bar.printed);
  return numbers;
}

std::string tempo(const std::string& content) {
  return "<direction><direction-type>" + content + "</direction-type></direction>\n";
}

}  // namespace

TEST_CASE("the first bar is a pickup when it is short, marked or not") {
  for (const char* mark : {"implicit=\"yes\"", ""}) {
    const Score score = read(piano(measure("0", attributes() + note("G4", 1), mark) +
                                   measure("1", note("C4", 4)) + measure("2", note("C4", 4))));
    REQUIRE(score.bars.size() == 3);
    CHECK(score.bars[0].pickup);
    CHECK(score.bars[0].length == Quarters(1, 1));
    CHECK_FALSE(score.bars[1].pickup);
  }
  CHECK_FALSE(read(piano(measure("1", attributes() + note("G4", 4)))).bars.front().pickup);
}

TEST_CASE("a bar that a repeat sign cuts in two is one bar") {
  const Score score =
      read(piano(measure("1", attributes() + note("C4", 4)) + measure("2", note("C4", 3)) +
                 measure("X1", note("D4", 1), "implicit=\"yes\"") + measure("3", note("C4", 4))));
  CHECK(printed(score) == std::vector<std::string>{"1", "2", "3"});
  CHECK(score.bars[1].first == 2);
  CHECK(score.bars[1].last == 3);
  CHECK(score.bars[1].length == Quarters(4, 1));
  CHECK(score.bars[2].first == 4);
}

TEST_CASE("the second piece of a bar is told by its mark, its odd number or the same number") {
  const auto bars = [](const std::string& number, const std::string& mark, int length) {
    return read(piano(measure("1", attributes() + note("C4", 4)) + measure("2", note("C4", 3)) +
                      measure(number, note("D4", length), mark)))
        .bars.size();
  };
  CHECK(bars("3", "implicit=\"yes\"", 1) == 2);
  CHECK(bars("X1", "", 1) == 2);
  CHECK(bars("2", "", 1) == 2);
  CHECK(bars("3", "", 1) == 3);
  // More than the meter holds are two bars.
  CHECK(bars("X1", "implicit=\"yes\"", 2) == 3);
}

TEST_CASE("printed numbers may begin again, and bars keep their places") {
  const Score score = read(piano(measure("1", attributes() + note("C4", 4)) +
                                 measure("2", note("C4", 4)) + measure("1", note("D4", 4))));
  CHECK(printed(score) == std::vector<std::string>{"1", "2", "1"});
  CHECK(warns(score, 3, "printed a second time"));
}

TEST_CASE("bars are called by their printed numbers where these run on") {
  const auto numbers = [](const std::vector<std::string>& printed_numbers, bool pickup) {
    std::string measures;
    for (const std::string& number : printed_numbers)
      measures += measure(number, (measures.empty() ? attributes() : "") +
                                      note("C4", pickup && measures.empty() ? 1 : 4));
    const Score score = read(piano(measures));
    std::string text;
    for (const ScoreBar& bar : score.bars) text += std::to_string(bar.number);
    return text + (warns(score, 0, "counted from") ? "!" : "");
  };
  CHECK(numbers({"1", "2", "3"}, false) == "123");
  CHECK(numbers({"0", "1", "2"}, true) == "012");
  CHECK(numbers({"X1", "1", "2"}, true) == "012");
  CHECK(numbers({"1", "2", "3"}, true) == "123");  // the player's score counts the pickup
  CHECK(numbers({"0", "1", "2"}, false) == "123!");
  CHECK(numbers({"17", "18", "19"}, false) == "123!");
  CHECK(numbers({"17", "18", "19"}, true) == "012!");
  CHECK(numbers({"1", "2", "1"}, false) == "123!");
}

TEST_CASE("a bar that is too long is kept, with a warning") {
  const Score score = read(piano(measure("1", attributes() + note("C4", 5))));
  CHECK(score.bars.front().length == Quarters(5, 1));
  CHECK(warns(score, 1, "5 quarter notes, and 4/4 has 4"));
}

TEST_CASE("meters and keys hold until the next; a mode is never guessed") {
  const std::string change =
      "<attributes><key><fifths>-3</fifths><mode>minor</mode></key>"
      "<time><beats>3+2</beats><beat-type>8</beat-type></time></attributes>\n";
  const Score score =
      read(piano(measure("1", attributes("4/4", "2") + note("C4", 4)) +
                 measure("2", change + note("C4", 2)) + measure("3", note("C4", 2))));
  CHECK(score.measures[0].key == ScoreKey{2, ""});
  CHECK(score.measures[2].key == ScoreKey{-3, "minor"});
  REQUIRE(score.measures[2].meter);
  CHECK(score.measures[2].meter->text == "3+2/8");
  CHECK(score.measures[2].meter->length == Quarters(5, 2));
}

TEST_CASE("meters of several kinds, of none, and changes inside a bar") {
  const std::string sum =
      "<attributes><time><beats>2</beats><beat-type>4</beat-type><beats>3</beats>"
      "<beat-type>8</beat-type></time></attributes>";
  const std::string free = "<attributes><time><senza-misura/></time></attributes>";
  const std::string flat = "<attributes><key><fifths>-1</fifths></key></attributes>";
  const Score score =
      read(piano(measure("1", sum + note("C4", 2) + flat) + measure("2", free + note("C4", 7))));
  CHECK(score.measures[0].meter->text == "2/4+3/8");
  CHECK(score.measures[0].meter->length == Quarters(7, 2));
  CHECK_FALSE(score.measures[0].key);
  CHECK_FALSE(score.measures[1].meter);
  CHECK(score.measures[1].key == ScoreKey{-1, ""});
}

TEST_CASE("tempi come from sound elements, or from metronome marks") {
  const std::string mark =
      "<metronome><beat-unit>quarter</beat-unit><beat-unit-dot/><per-minute>60</per-minute>"
      "</metronome>";
  const Score score = read(
      piano(measure("1", attributes() + note("C4", 4)) +
            measure("2", "<direction><direction-type>" + mark +
                             "</direction-type><sound tempo=\"96\"/></direction>" + note("C4", 4)) +
            measure("3", note("C4", 2) + tempo(mark) + note("C4", 2)) +
            measure("4", note("C4", 4)) + measure("5", "<sound tempo=\"0\"/>" + note("C4", 4))));
  CHECK_FALSE(score.measures[0].tempo);
  CHECK(score.measures[1].tempo->per_minute == 96);
  CHECK(score.measures[2].tempo->per_minute == 96);
  CHECK(score.measures[3].tempo->per_minute == 90);
  CHECK(score.measures[4].tempo->per_minute == 90);
  CHECK(warns(score, 5, "passed over"));
}

TEST_CASE("notes stand where backups, skips, chords and grace notes put them") {
  const std::string content =
      attributes("4/4", "0", 2, 2) + note("C4", 4) + note({"E4", 4, 1, "", true, false}) +
      note({"D4", 0, 1, "", false, true}) + note("C4", 4) + backup(8) + forward(2) +
      note({"C3", 3, 2, "<tie type=\"stop\"/><tie type=\"start\"/>", false, false}) +
      note("G4", 3, 1) + rest(1, 2);
  const std::vector<ScoreNote> notes = read(piano(measure("1", content))).measures.front().notes;
  REQUIRE(notes.size() == 7);
  CHECK(notes[1].onset == Quarters(0, 1));
  CHECK(notes[2].grace);
  CHECK(notes[2].onset == Quarters(2, 1));
  CHECK(notes[2].duration == Quarters());
  CHECK(notes[3].onset == Quarters(2, 1));
  CHECK(notes[4].onset == Quarters(1, 1));
  CHECK(notes[4].duration == Quarters(3, 2));
  CHECK(notes[4].staff == 2);
  CHECK(notes[4].tie_stop);
  CHECK(notes[4].tie_start);
  CHECK(notes[5].onset == Quarters(5, 2));  // one voice, crossing to the top staff
  CHECK(notes[5].staff == 1);
  CHECK(notes[6].rest);
}

TEST_CASE("a sign for the bar before is no music, with a warning") {
  const std::string sign =
      "<attributes><measure-style><measure-repeat type=\"start\">1"
      "</measure-repeat></measure-style></attributes>";
  CHECK(warns(read(piano(measure("1", attributes() + note("C4", 4)) + measure("2", sign))), 2,
              "stands for the bars before"));
}

TEST_CASE("triplets are exact") {
  const Score score = read(piano(
      measure("1", attributes("1/4", "0", 1, 12) + note("C4", 4) + note("D4", 4) + note("E4", 4))));
  CHECK(score.measures.front().notes[1].onset == Quarters(1, 3));
  CHECK(score.measures.front().length == Quarters(1, 1));
}

TEST_CASE("what cannot be music is refused with its line and bar") {
  const auto message = [](const std::string& content) {
    const Diagnostic refused = refusal(piano(measure("7", content)));
    CHECK(refused.at.line > 1);
    CHECK_FALSE(refused.source_line.empty());
    return refused.message;
  };
  using Catch::Contains;
  const std::string chord = note({"E4", 4, 1, "", true, false});
  CHECK_THAT(message(attributes("4/4", "0", 1, 0) + note("C4", 4)), Contains("\"0\" divisions"));
  CHECK_THAT(message(attributes("0/4")), Contains("\"0\" beats"));
  CHECK_THAT(message(attributes("4/3")), Contains("no beat of a meter"));
  CHECK_THAT(message(attributes("4/4", "8")), Contains("seven sharps"));
  CHECK_THAT(message(attributes("4/4", "0", 9)), Contains("from 1 to 8"));
  CHECK_THAT(message(attributes() + chord), Contains("a chord's second note"));
  CHECK_THAT(message(attributes() + note("C4", -4)), Contains("\"-4\" is no duration"));
  CHECK_THAT(message(attributes() + note("C4", 2000000)), Contains("too long"));
  CHECK_THAT(message(attributes() + note("H4", 4)), Contains("\"H\" is no note"));
  CHECK_THAT(message(attributes() + "<note><duration>4</duration></note>"),
             Contains("neither a pitch nor a rest"));
  CHECK_THAT(message(attributes() + "<note><rest/></note>"), Contains("no duration"));
  CHECK(refusal(piano(measure("7", attributes() + note("C4", -4)))).chain.front() ==
        "in bar 7 of part P1 (Piano)");
}

TEST_CASE("a score without bars, notes or a listed part is refused") {
  CHECK(refusal(piano("")).message == "this score has no bars");
  CHECK(refusal(piano(measure("1", attributes() + rest(4)))).message == "part P1 has no notes");
  std::string unlisted = piano(measure("1", attributes() + note("C4", 4)));
  unlisted.replace(unlisted.find("<part id=\"P1\""), 13, "<part id=\"P9\"");
  CHECK(refusal(unlisted).message == "part \"P9\" is not in the list of parts");
  std::vector<Part> many;
  for (int part = 0; part < 65; ++part)
    many.push_back({fmt::format("P{}", part), "", measure("1", attributes() + note("C4", 4))});
  CHECK_THAT(refusal(partwise(many)).message, Catch::Contains("more than 64 parts"));
}

TEST_CASE("a voice that goes back to before its bar begins with it, with a warning") {
  const Score score =
      read(piano(measure("1", attributes() + note("C4", 4) + backup(400) + note("E4", 4))));
  CHECK(score.measures.front().notes[1].onset == Quarters());
  CHECK(warns(score, 1, "before the bar"));
}

TEST_CASE("more than 10,000 bars are refused") {
  std::string measures = measure("1", attributes() + note("C4", 4));
  for (int bar = 2; bar <= 10000; ++bar) measures += "<measure number=\"2\"/>";
  CHECK(read(piano(measures)).measures.size() == 10000);
  CHECK_THAT(refusal(piano(measures + "<measure number=\"2\"/>")).message,
             Catch::Contains("more than 10000 bars"));
}
