// Bars that are the same at another pitch.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/passages/bar_notes.h"

namespace cahier {

// A bar without its pitch: equal for bars that differ by one interval in all hands.
struct TransposedBar {
  int shape = 0;  // equal for equal intervals and lengths
  int base = 0;   // the pitch of its first note, in semitones above C of octave 0
};

// One for each bar; none for silent bars and for those of notes without pitch.
std::vector<std::optional<TransposedBar>> transposed_bars(const std::vector<BarNotes>& bars);

// "the same, a whole step higher". REQUIRES: semitones is not 0.
std::string transposition_words(int semitones);

}  // namespace cahier
