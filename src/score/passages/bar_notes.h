// Bars as sets of notes, so that they can be compared quickly.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

// What a note is when bars are compared for likeness: grace notes and ties left aside.
struct NoteInBar {
  int hand = 0;    // index in score.hands
  Quarters onset;  // from the beginning of the bar
  Quarters duration;
  SpelledPitch pitch;
  auto operator<=>(const NoteInBar&) const = default;
};

struct BarNotes {
  std::vector<NoteInBar> notes;   // sorted, each once; without grace notes
  std::vector<int> note_numbers;  // equal for equal notes of any bar; sorted
  std::vector<int> content;       // of each hand: equal exactly where bars hold the same
  std::vector<bool> silent;       // of each hand
  int all = 0;                    // of all hands together, likewise

  bool is_silent() const { return notes.empty(); }
};

// One for each bar of the score.
std::vector<BarNotes> notes_of_bars(const Score& score);

}  // namespace cahier
