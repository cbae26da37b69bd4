// Notes and chords in the words with which they are spoken.
#pragma once

#include <string>
#include <vector>

#include "score/names/note_name.h"
#include "score/names/spoken_onset.h"

namespace cahier {

struct SpokenStyle {
  Naming naming = Naming::letters;
  bool with_octaves =
      false;  // of notes that are no chord: "C 4", the octave that begins at middle C
};

// "A minor, first inversion", "dominant seventh on G, third inversion".
std::string spoken_text(const ChordName& chord, Naming naming, const Words& words);

// The chord where there is one, else the notes from the bottom: "C", "C and F sharp", "D in
// octaves", "C held and E", "grace note B".
std::string spoken_text(const SpokenOnset& onset, const SpokenStyle& style, const Words& words);

// A row of them, "C; E; A minor, first inversion".
std::string spoken_text(const std::vector<SpokenOnset>& onsets, const SpokenStyle& style,
                        const Words& words);

}  // namespace cahier
