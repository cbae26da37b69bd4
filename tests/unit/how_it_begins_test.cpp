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

namespace {

std::string lyric(const std::string& text, const std::string& syllabic, int verse = 1) {
  return fmt::format("<lyric number=\"{}\"><syllabic>{}</syllabic><text>{}</text></lyric>", verse,
                     syllabic, text);
}

std::string sung(const std::string& pitch, int duration, const std::string& lyrics) {
  return note(Xml{pitch, duration, 1, lyrics, false, false});
}

// Four bars of 4/4: "La mer im-mo- | -bi-le, la mer ___ | 1. sans é-toi-les 2. sous la | lune".
Score song() {
  return read(partwise(
      {{"P1", "Voice",
        measure("1", attributes("4/4") + sung("C4", 1, lyric("La", "single")) +
                         sung("D4", 1, lyric("mer", "single")) +
                         sung("E4", 1, lyric("im", "begin")) +
                         sung("F4", 1, lyric("mo", "middle"))) +
            measure("2", sung("G4", 1, lyric("bi", "middle")) + sung("A4", 1, lyric("le,", "end")) +
                             sung("G4", 1, lyric("la", "single")) +
                             sung("F4", 1, lyric("mer", "single"))) +
            measure("3", sung("E4", 1, lyric("sans", "single") + lyric("sous", "single", 2)) +
                             sung("D4", 1, lyric("é", "begin") + lyric("la", "single", 2)) +
                             sung("C4", 2, lyric("toi", "middle"))) +
            measure("4", rest(1) + note("B3", 1) + sung("C4", 2, lyric("les", "end")))}}));
}

}  // namespace

TEST_CASE("a beginning has the words that are sung there, syllables of one word joined") {
  // MusicXML 4.0, syllabic: begin, middle and end are parts of one word, single is a whole one.
  const Score score = song();
  CHECK(begins(score, 0) == "C4 D “La mer”");
  // From inside a word its end, with a hyphen; what is sung later stays out.
  CHECK(begins(score, 1) == "G4 A “-bile,”");
  // A word that begins in time is whole, over the bar line; the first verse alone.
  CHECK(begins(score, 2) == "E4 D “sans étoiles”");
  // Only what is sung in time.
  CHECK(begins(score, 3) == "B3");
}

TEST_CASE("words that are sung are whole, and as many as are soon read") {
  const auto words = [](const std::string& first, const std::string& second) {
    return begins(
        read(partwise({{"P1", "Voice",
                        measure("1", attributes("4/4") + sung("C4", 1, lyric(first, "single")) +
                                         sung("D4", 1, lyric(second, "single")) + rest(2))}})));
  };
  CHECK(words("twelve chars", "twelve more") == "C4 D “twelve chars twelve more”");
  CHECK(words("twelve chars", "twelve more.") == "C4 D “twelve chars”");
  CHECK(words(std::string(25, 'x'), "la") == "C4 D");
  CHECK(words("two\nlines", "la") == "C4 D “two lines la”");
}

TEST_CASE("of several verses the first that is written at a bar is sung there") {
  const Score score =
      read(partwise({{"P1", "Voice",
                      measure("1", attributes("4/4") + sung("C4", 1, lyric("La", "single")) +
                                       sung("D4", 1, lyric("lune", "single", 2)) + rest(2))}}));
  CHECK(begins(score) == "C4 D “La”");
}

TEST_CASE("two voices on one staff sing their words once, and elided syllables are one") {
  const std::string both =
      "<lyric number=\"1\"><syllabic>single</syllabic><text>que</text>"
      "<elision> </elision><syllabic>begin</syllabic><text>el</text></lyric>";
  const auto voice = [&](const char* pitch) {
    return sung(pitch, 1, both) + sung(pitch, 3, lyric("le", "end"));
  };
  CHECK(begins(read(partwise({{"P1", "Choir",
                               measure("1", attributes("4/4") + voice("G4") + backup(4) +
                                                voice("E4"))}}))) == "E4–G4 E–G “que elle”");
}

TEST_CASE("a beginning read aloud names chords whole and says flats and sharps") {
  const auto aloud = [](const Score& score) {
    return beginning_aloud(score, how_it_begins(score, 0, english_words()), english_words());
  };
  const Score score = read(
      piano(measure("1", attributes("4/4", "0", 2) + note("Eb5", 1) + note("D5", 3) + backup(4) +
                             note("A2", 2, 2) + note(Xml{"C3", 2, 2, "", true, false}) +
                             note(Xml{"E3", 2, 2, "", true, false}) + note("F#2", 2, 2))));
  CHECK(aloud(score) == std::vector<std::string>{"right hand: E flat 5; D", "left hand: A minor"});
  CHECK(aloud(song()) == std::vector<std::string>{"C 4; D “La mer”"});
}

TEST_CASE("beginnings are asked of any bar, a pickup too") {
  const Score score =
      read(piano(measure("0", attributes("3/4") + note("G4", 1), "implicit=\"yes\"") +
                 measure("1", note("C5", 3)) + measure("2", note("B4", 3))));
  CHECK(begins(score, 0) == "G4");
  CHECK(begins(score, 1) == "C5");
  CHECK(begins(score, 2) == "B4");
}
