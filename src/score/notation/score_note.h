// A note or rest as it is written.
#pragma once

#include <compare>
#include <cstdint>
#include <string>
#include <vector>

#include "score/notation/quarters.h"

namespace cahier {

struct SpelledPitch {
  char step = 'C';    // A to G
  int alter = 0;      // hundredths of a semitone: 100 for a sharp
  int octave = 4;     // 4 begins at middle C
  bool drum = false;  // without pitch: step and octave say where it stands on the staff
  auto operator<=>(const SpelledPitch&) const = default;
};

// A syllable under a note, of one verse.
struct SungSyllable {
  std::string verse;     // its number as written, often "1"
  std::string text;      // may be several words, sung as one
  bool joined = false;   // to the one before, in one word: "-leil"
  bool goes_on = false;  // its word goes on under a later note: "so-"
};

struct ScoreNote {
  int staff = 1;      // from the top of the score's hands
  Quarters onset;     // from the beginning of the measure element
  Quarters duration;  // 0 for a grace note
  SpelledPitch pitch;
  bool grace = false;
  bool tie_stop = false;  // tied to the note before it
  bool tie_start = false;
  bool rest = false;
  bool cue = false;  // another player's, in small print
  std::string voice;
  std::vector<SungSyllable> sung{};
  // Slurs by their numbers, 1 to 16, each a bit: the lowest is number 1.
  std::uint16_t slurs_begun = 0;
  std::uint16_t slurs_ended = 0;
  bool fermata = false;
  bool breath = false;  // a breath mark or a caesura after it

  bool sounds() const { return !rest && !cue; }
};

}  // namespace cahier
