// The notes of a hand one after the other, as somebody says them.
#pragma once

#include <optional>
#include <vector>

#include "score/names/chord_name.h"
#include "score/score.h"

namespace cahier {

struct SpokenNote {
  SpelledPitch pitch;
  bool held = false;  // tied to the note before it
};

// What is written at one moment.
struct SpokenOnset {
  int bar = 0;     // by index, from 0
  Quarters onset;  // from the beginning of the bar
  bool grace = false;
  std::vector<SpokenNote> notes;   // from the bottom of the staff, each pitch once, at least one
  std::optional<ChordName> chord;  // that these notes spell, held ones too

  bool is_held() const;  // all of it
};

// Every moment at which the hand strikes a note in these bars, by index, inclusive, in the order of
// the score; grace notes by themselves, one by one. What is only held stands there where it is held
// into the first bar, and nowhere else. Notes without pitch have no name and are left out.
std::vector<SpokenOnset> spoken_onsets(const Score& score, int hand, int first_bar, int last_bar);

}  // namespace cahier
