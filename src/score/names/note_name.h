// What a note is called.
#pragma once

#include <string>

#include "score/notation/score_note.h"
#include "text/words.h"

namespace cahier {

enum class Naming {
  letters,  // C sharp, B flat
  german,   // Cis, B; H is the B of the others
  solfege   // do sharp, si flat: do is always C
};

// "F♯", "B♭", "C♯♯"; a sharp or flat of a part of a semitone is left out.
std::string note_name(const SpelledPitch& pitch);

// As it is spoken, without octave: "F sharp", "B double flat". An alteration that is no whole
// number of semitones is told as far as it is one, and then "raised" or "lowered".
std::string spoken_note(const SpelledPitch& pitch, Naming naming, const Words& words);

}  // namespace cahier
