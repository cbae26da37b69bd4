// Chords by their spelling, against a table of chord qualities as every harmony book has it.

#include <map>

#include "catch.h"
#include "score/names/chord_name.h"

using namespace cahier;

namespace {

// Common practice, from memory: the intervals above the root of triads and seventh chords.
const std::map<ChordQuality, std::vector<std::string>> kHandbook = {
    {ChordQuality::major, {"M3", "P5"}},
    {ChordQuality::minor, {"m3", "P5"}},
    {ChordQuality::diminished, {"m3", "d5"}},
    {ChordQuality::augmented, {"M3", "A5"}},
    {ChordQuality::dominant_seventh, {"M3", "P5", "m7"}},
    {ChordQuality::major_seventh, {"M3", "P5", "M7"}},
    {ChordQuality::minor_seventh, {"m3", "P5", "m7"}},
    {ChordQuality::minor_major_seventh, {"m3", "P5", "M7"}},
    {ChordQuality::half_diminished_seventh, {"m3", "d5", "m7"}},
    {ChordQuality::diminished_seventh, {"m3", "d5", "d7"}},
    {ChordQuality::augmented_major_seventh, {"M3", "A5", "M7"}}};

// Intervals as steps along the circle of fifths … F C G D A E B …, which spells without counting
// letters or semitones.
const std::map<std::string, int> kFifths = {{"P1", 0},  {"P5", 1},  {"M3", 4},
                                            {"M7", 5},  {"A5", 8},  {"m7", -2},
                                            {"m3", -3}, {"d5", -6}, {"d7", -9}};

// 0 is F, 1 is C …, 7 is F sharp, -1 is B flat.
SpelledPitch on_circle(int place) {
  const int letter = ((place % 7) + 7) % 7;
  return {"FCGDAEB"[letter], 100 * ((place - letter) / 7), 0, false};
}

// Each note above the one before it, from octave 2 on.
std::vector<SpelledPitch> upwards(std::vector<SpelledPitch> notes) {
  const auto letter = [](const SpelledPitch& note) { return (note.step - 'C' + 7) % 7; };
  int octave = 2;
  for (std::size_t at = 0; at < notes.size(); ++at) {
    if (at > 0 && letter(notes[at]) <= letter(notes[at - 1])) ++octave;
    notes[at].octave = octave;
  }
  return notes;
}

SpelledPitch spelled(const std::string& name) {
  int alter = 0;
  for (const char sign : name.substr(1)) alter += sign == '#' ? 100 : sign == 'b' ? -100 : 0;
  return {name.front(), alter, name.back() - '0', false};
}

std::optional<ChordName> named(const std::vector<std::string>& names) {
  std::vector<SpelledPitch> notes;
  for (const std::string& name : names) notes.push_back(spelled(name));
  return chord_name(notes);
}

void check_chord(const std::vector<SpelledPitch>& notes, const SpelledPitch& root,
                 ChordQuality quality, int inversion) {
  const auto found = chord_name(notes);
  REQUIRE(found);
  CHECK(found->root.step == root.step);
  CHECK(found->root.alter == root.alter);
  CHECK(found->quality == quality);
  CHECK(found->inversion == inversion);
}

}  // namespace

TEST_CASE("every triad and seventh on every root, in every inversion, doubled and not") {
  int chords = 0;
  for (int place = -7; place <= 13; ++place)  // F flat to B sharp: 21 roots
    for (const auto& [quality, intervals] : kHandbook) {
      std::vector<SpelledPitch> members = {on_circle(place)};
      for (const std::string& interval : intervals)
        members.push_back(on_circle(place + kFifths.at(interval)));
      if (std::ranges::any_of(members,
                              [](const SpelledPitch& note) { return std::abs(note.alter) > 200; }))
        continue;
      const SpelledPitch root = members.front();
      CAPTURE(root.step, root.alter, static_cast<int>(quality));
      for (int inversion = 0; inversion < static_cast<int>(members.size()); ++inversion) {
        std::vector<SpelledPitch> notes = upwards(members);
        check_chord(notes, root, quality, inversion);
        CHECK_FALSE(chord_name(notes)->without_fifth);
        for (const SpelledPitch& note : std::vector(notes))
          notes.push_back({note.step, note.alter, note.octave + 2, false});
        std::ranges::reverse(notes);
        check_chord(notes, root, quality, inversion);
        std::rotate(members.begin(), members.begin() + 1, members.end());
        ++chords;
      }
    }
  // 21 roots and 4 × 3 + 7 × 4 places, less the few that would need triple alterations.
  CHECK(chords > 21 * 35);
}

TEST_CASE("chords that everybody knows") {
  const auto is = [](const std::vector<std::string>& names, const std::string& root,
                     ChordQuality quality, int inversion) {
    const auto found = named(names);
    return found && found->root.step == root.front() &&
           found->root.alter == spelled(root + "4").alter && found->quality == quality &&
           found->inversion == inversion;
  };
  CHECK(is({"C4", "E4", "A4"}, "A", ChordQuality::minor, 1));
  CHECK(is({"F3", "G3", "B3", "D4"}, "G", ChordQuality::dominant_seventh, 3));
  CHECK(is({"G#3", "B3", "D4", "F4"}, "G#", ChordQuality::diminished_seventh, 0));
  CHECK(is({"B2", "F3", "A3", "D4"}, "B", ChordQuality::half_diminished_seventh, 0));
  CHECK(is({"Bb3", "D4", "F4"}, "Bb", ChordQuality::major, 0));
  CHECK(is({"F#3", "B3", "D#4"}, "B", ChordQuality::major, 2));
}

TEST_CASE("notes are named as they are spelled, not as they sound") {
  CHECK_FALSE(named({"B#3", "E4", "G4"}));
  CHECK_FALSE(named({"C4", "Fb4", "G4"}));
  CHECK_FALSE(named({"C4", "D#4", "G4"}));
  CHECK_FALSE(named({"C4", "E4", "G4", "A#4"}));
  // Two alterations of one letter are no chord, nor is a half-sharp.
  CHECK_FALSE(named({"C4", "E4", "Eb5", "G4"}));
  CHECK_FALSE(chord_name({{'C', 0, 4, false}, {'E', -50, 4, false}, {'G', 0, 4, false}}));
  CHECK_FALSE(chord_name({{'C', 0, 4, true}, {'E', 0, 4, false}, {'G', 0, 4, false}}));
  CHECK_FALSE(named({"C4", "D4", "E4", "G4"}));
  CHECK_FALSE(named({"C3", "E3", "G3", "B3", "D4"}));
}

TEST_CASE("the note at the bottom of the staff says the inversion, in whatever order they come") {
  CHECK(named({"Cb4", "Eb4", "Gb4", "Bb3"})->inversion == 3);
  CHECK(named({"E4", "C4", "G4"})->inversion == 0);
  CHECK(named({"G4", "E4", "C5"})->inversion == 1);
}

TEST_CASE("a seventh chord may lack its fifth, a triad nothing") {
  const auto seventh = named({"G3", "B3", "F4"});
  REQUIRE(seventh);
  CHECK(seventh->quality == ChordQuality::dominant_seventh);
  CHECK(seventh->without_fifth);
  CHECK(named({"F3", "G3", "B3"})->inversion == 3);
  CHECK(named({"D3", "F3", "C4"})->quality == ChordQuality::minor_seventh);
  CHECK(named({"C3", "E3", "B3"})->quality == ChordQuality::major_seventh);
  CHECK(named({"C3", "Eb3", "B3"})->quality == ChordQuality::minor_major_seventh);
  CHECK(named({"G#3", "B3", "F4"})->quality == ChordQuality::diminished_seventh);
  CHECK_FALSE(named({"G3", "D4", "F4"}));  // the third decides
  CHECK_FALSE(named({"B3", "D4", "F4", "E4"}));
  CHECK_FALSE(named({"C4", "E4"}));
  CHECK_FALSE(named({"C4", "G4"}));
  CHECK_FALSE(named({"C4", "C5"}));
  CHECK_FALSE(named({"C4"}));
  CHECK_FALSE(chord_name({}));
}
