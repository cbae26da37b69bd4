// The notes of a hand as they are spoken.

#include "catch.h"
#include "score/names/note_name.h"
#include "score/names/spoken_text.h"
#include "written_score.h"

using namespace cahier;
using namespace cahier::written;

namespace {

std::string said_note(char step, int alter, Naming naming) {
  return spoken_note({step, alter, 4, false}, naming, english_words());
}

std::string said(const Score& score, int hand = 0, int first = 0, int last = 0,
                 const SpokenStyle& style = {}) {
  return spoken_text(spoken_onsets(score, hand, first, last), style, english_words());
}

std::string of_chord(const std::string& pitch, int duration, const std::string& extra = "") {
  return note(Xml{pitch, duration, 1, extra, true, false});
}

std::string tied(const std::string& pitch, int duration, bool in_chord = false) {
  return note(Xml{pitch, duration, 1, "<tie type=\"stop\"/>", in_chord, false});
}

}  // namespace

TEST_CASE("notes have their names in three systems") {
  // Common practice, from memory.
  CHECK(said_note('C', 100, Naming::letters) == "C sharp");
  CHECK(said_note('B', -100, Naming::letters) == "B flat");
  CHECK(said_note('F', 200, Naming::letters) == "F double sharp");
  CHECK(said_note('E', -200, Naming::letters) == "E double flat");
  CHECK(said_note('G', 0, Naming::letters) == "G");
  const std::vector<std::string> natural = {"A", "H", "C", "D", "E", "F", "G"};
  const std::vector<std::string> sharp = {"Ais", "His", "Cis", "Dis", "Eis", "Fis", "Gis"};
  const std::vector<std::string> flat = {"As", "B", "Ces", "Des", "Es", "Fes", "Ges"};
  const std::vector<std::string> double_flat = {"Ases", "Heses", "Ceses", "Deses",
                                                "Eses", "Feses", "Geses"};
  const std::vector<std::string> fixed_do = {"la", "si", "do", "re", "mi", "fa", "sol"};
  for (std::size_t at = 0; at < 7; ++at) {
    const char step = static_cast<char>('A' + at);
    CHECK(said_note(step, 0, Naming::german) == natural[at]);
    CHECK(said_note(step, 100, Naming::german) == sharp[at]);
    CHECK(said_note(step, -100, Naming::german) == flat[at]);
    CHECK(said_note(step, -200, Naming::german) == double_flat[at]);
    CHECK(said_note(step, 200, Naming::german) ==
          std::string(natural[at] == "H" ? "H" : natural[at]) + "isis");
    CHECK(said_note(step, 0, Naming::solfege) == fixed_do[at]);
    CHECK(said_note(step, -100, Naming::solfege) == fixed_do[at] + " flat");
    CHECK(said_note(step, 100, Naming::solfege) == fixed_do[at] + " sharp");
  }
  CHECK(said_note('C', 50, Naming::letters) == "C raised");
  CHECK(said_note('C', -150, Naming::german) == "Ces lowered");
}

TEST_CASE("single notes, chords and what is no chord are said in the order of the score") {
  const Score score = read(piano(
      measure("1", attributes("6/4") + note("C4", 1) + rest(1) + note("C4", 1) + of_chord("E4", 1) +
                       of_chord("A4", 1) + note("D4", 1) + of_chord("F#4", 1) + note("F3", 1) +
                       of_chord("G3", 1) + of_chord("B3", 1) + of_chord("D4", 1) + note("Bb2", 1) +
                       of_chord("Bb3", 1))));
  CHECK(said(score) ==
        "C; A minor, first inversion; D and F sharp; dominant seventh on G, third inversion; B "
        "flat in octaves");
  CHECK(said(score, 0, 0, 0, {Naming::german, true}) ==
        "C 4; A minor, first inversion; D 4 and Fis 4; dominant seventh on G, third inversion; B 2 "
        "in octaves");
}

TEST_CASE("every quality and inversion has its words") {
  const auto text = [](ChordQuality quality, int inversion, bool without_fifth = false) {
    return spoken_text(ChordName{{'C', 0, 4, false}, quality, inversion, without_fifth},
                       Naming::letters, english_words());
  };
  CHECK(text(ChordQuality::major, 0) == "C major");
  CHECK(text(ChordQuality::diminished, 2) == "C diminished, second inversion");
  CHECK(text(ChordQuality::augmented, 0) == "C augmented");
  CHECK(text(ChordQuality::major_seventh, 0) == "major seventh on C");
  CHECK(text(ChordQuality::minor_seventh, 0) == "minor seventh on C");
  CHECK(text(ChordQuality::minor_major_seventh, 0) == "minor-major seventh on C");
  CHECK(text(ChordQuality::half_diminished_seventh, 0) == "half-diminished seventh on C");
  CHECK(text(ChordQuality::diminished_seventh, 0) == "diminished seventh on C");
  CHECK(text(ChordQuality::augmented_major_seventh, 0) == "augmented major seventh on C");
  CHECK(text(ChordQuality::dominant_seventh, 1, true) ==
        "dominant seventh on C, without its fifth, first inversion");
}

TEST_CASE("tied notes are said where they are held into the range, and not again") {
  const Score score = read(
      piano(measure("1", attributes("4/4") + note("E5", 4)) +
            measure("2", tied("E5", 2) + note("D5", 1) + tied("D5", 1)) +
            measure("3", tied("C4", 2) + of_chord("E4", 2) + tied("C4", 2) + of_chord("D4", 2))));
  CHECK(said(score, 0, 0, 1) == "E; D");
  CHECK(said(score, 0, 1, 1) == "E held; D");
  CHECK(said(score, 0, 2, 2) == "C held and E; C held and D");
}

TEST_CASE("a chord counts the notes that are held in it") {
  const Score score = read(
      piano(measure("1", attributes("4/4") + note("C4", 2) + of_chord("F4", 2) + of_chord("A4", 2) +
                             tied("C4", 2) + of_chord("E4", 2) + of_chord("G4", 2))));
  CHECK(said(score) == "F major, second inversion; C major");
}

TEST_CASE("two voices of a hand are one, and each hand has its own") {
  const Score score =
      read(piano(measure("1", attributes("4/4", "0", 2) + note("G4", 4) + backup(4) +
                                  note("C4", 2) + note("G4", 2) + backup(4) + note("D3", 4, 2))));
  CHECK(said(score, 0) == "C and G; G");
  CHECK(said(score, 1) == "D");
}

TEST_CASE("where one voice holds what another strikes, it is struck") {
  for (const bool held_first : {true, false}) {
    const std::string held = tied("G4", 4);
    const std::string struck = note("G4", 4);
    const Score score = read(piano(measure("1", attributes() + (held_first ? held : struck) +
                                                    backup(4) + (held_first ? struck : held))));
    CHECK(said(score) == "G");
  }
}

TEST_CASE("grace notes come before the note that they belong to; drums have no name") {
  const Score score = read(piano(measure(
      "1", attributes() + note(Xml{"B4", 0, 1, "", false, true}) +
               note(Xml{"D5", 0, 1, "", false, true}) + note("C5", 2) +
               "<note><unpitched><display-step>E</display-step><display-octave>4</display-octave>"
               "</unpitched><duration>2</duration></note>")));
  CHECK(said(score) == "grace note B; grace note D; C");
}

TEST_CASE("bars that a repeat sign divides are said as one") {
  const Score score =
      read(piano(measure("1", attributes() + note("C4", 4)) + measure("2", note("D4", 2)) +
                 measure("X1", note("E4", 2), "implicit=\"yes\"")));
  CHECK(said(score, 0, 1, 1) == "D; E");
  CHECK(spoken_onsets(score, 0, 1, 1)[1].onset == Quarters(2, 1));
}
