// The first notes at a bar.

#include "score/names/how_it_begins.h"
#include "catch.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

std::string begins(const Score& score, int bar = 0) {
  return beginning_text(score, how_it_begins(score, bar, english_words()), english_words());
}

std::string begins(const std::string& bar, const std::string& meter = "4/4", int divisions = 1) {
  return begins(read(piano(measure("1", attributes(meter, "0", 2, divisions) + bar))));
}

std::string also(const std::string& pitch, int duration, const std::string& extra = "") {
  return note(Xml{pitch, duration, 1, extra, true, false});
}

const std::string kTied = "<tie type=\"stop\"/>";

}  // namespace

TEST_CASE("a bar begins with the names of its first two beats, hand by hand") {
  CHECK(begins(note("Eb5", 1) + note("D5", 1) + note("C5", 2) + backup(4) + note("Ab2", 4, 2),
               "4/4", 1) == "R: E♭5 D · L: A♭2");
  CHECK(begins(note("Eb5", 1) + note("D5", 1) + note("C5", 2) + backup(4) + note("Ab2", 4, 2),
               "2/2", 1) == "R: E♭5 D C · L: A♭2");
  // In 6/8 two beats are the bar.
  CHECK(begins(note("C5", 2) + note("D5", 1) + note("E5", 3), "6/8", 2) == "R: C5 D E");
  CHECK(begins(note("C5", 1) + note("D5", 1) + note("E5", 1), "3/8", 2) == "R: C5 D");
}

TEST_CASE("a beginning is short: four names a hand, of a chord two") {
  std::string run;
  for (const char* pitch : {"C5", "D5", "E5", "F5", "G5", "A5", "B5", "C6"}) run += note(pitch, 1);
  CHECK(begins(run, "2/4", 4) == "R: C5 D E F");
  CHECK(begins(note("A2", 1) + also("C3", 1) + also("E3", 1) + note("G2", 3) + also("G3", 3)) ==
        "R: A2–E3 G–G");
}

TEST_CASE("a beginning leaves out rests, graces and drums, and says what is held") {
  CHECK(begins(rest(1) + note("C5", 3) + backup(4) + rest(4, 2)) == "R: C5");
  CHECK(begins(rest(2) + note("C5", 2) + backup(4) + note("C3", 4, 2)) == "L: C3");
  CHECK(begins(rest(4) + backup(4) + rest(2, 2) + note("C3", 2, 2)).empty());
  CHECK(begins(note(Xml{"B4", 0, 1, "", false, true}) + note("C5", 4)) == "R: C5");
  CHECK(begins(note(Xml{"E5", 1, 1, kTied, false, false}) + note("D5", 3)) == "R: E5 held D");
  CHECK(begins(note(Xml{"C4", 1, 1, kTied, false, false}) + also("E4", 1, kTied) + note("D4", 3)) ==
        "R: C4–E4 held D");
  CHECK(begins(note(Xml{"C4", 1, 1, kTied, false, false}) + also("E4", 1) + note("D4", 3)) ==
        "R: C4–E4 D");
}

TEST_CASE("a hand that is neither right nor left is called by its name, the only one by none") {
  const Score flute = read(
      partwise({{"P1", "Flute", measure("1", attributes() + note("F#5", 2) + note("G5", 2))}}));
  CHECK(begins(flute) == "F♯5");
  const Score organ =
      read(partwise({{"P1", "Organ",
                      measure("1", attributes("4/4", "0", 3) + note("C5", 4) + backup(4) +
                                       note("E3", 4, 2) + backup(4) + note("C2", 4, 3))}}));
  CHECK(begins(organ) == "R: C5 · L: E3 · pedals: C2");
}

TEST_CASE("beginnings are asked of any bar, a pickup too") {
  const Score score =
      read(piano(measure("0", attributes("3/4") + note("G4", 1), "implicit=\"yes\"") +
                 measure("1", note("C5", 3)) + measure("2", note("B4", 3))));
  CHECK(begins(score, 0) == "G4");
  CHECK(begins(score, 1) == "C5");
  CHECK(begins(score, 2) == "B4");
}
