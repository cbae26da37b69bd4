// What one hand plays in one bar.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

struct HandNote {
  Quarters onset;  // from the beginning of the bar
  SpelledPitch pitch;
  bool grace = false;
  bool held = false;  // tied to the note before it, and not struck
};

// The hand of a staff, as an index in `hands`; the last where none has it.
int hand_of_staff(const std::vector<ScoreHand>& hands, int staff);

// The notes of the bar with that index, by onset; of one onset the grace notes first, as they are
// written, then the others from the bottom of the staff, each pitch once: of two voices that have
// the same, one struck and one held, it is struck.
std::vector<HandNote> hand_notes(const Score& score, int bar, int hand);

// The place on the staff, in steps above the C of octave 0, whatever the alteration.
int staff_steps(const SpelledPitch& pitch);

}  // namespace cahier
