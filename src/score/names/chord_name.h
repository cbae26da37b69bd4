// Triads and seventh chords, told by their spelling.
#pragma once

#include <optional>
#include <vector>

#include "score/notation/score_note.h"

namespace cahier {

enum class ChordQuality {
  major,
  minor,
  diminished,
  augmented,
  dominant_seventh,
  major_seventh,
  minor_seventh,
  minor_major_seventh,
  half_diminished_seventh,
  diminished_seventh,
  augmented_major_seventh
};

struct ChordName {
  SpelledPitch root;  // where it stands lowest
  ChordQuality quality = ChordQuality::major;
  int inversion = 0;           // the member at the bottom: 0 root, 1 third, 2 fifth, 3 seventh
  bool without_fifth = false;  // of a seventh chord
  bool operator==(const ChordName&) const = default;
};

// The chord that notes sounding together spell; nullopt where they spell none. Octaves and doubled
// notes do not matter, but for the lowest note on the staff, which says the inversion. The letters
// decide, never the key on a keyboard: B sharp, E and G are no C major. A chord must be complete,
// but a seventh chord may lack its fifth, which is then taken for perfect or, where no chord with a
// perfect fifth fits, for diminished. A triad that lacks a note is two notes. Notes without pitch
// and alterations that are no whole semitones spell nothing.
std::optional<ChordName> chord_name(const std::vector<SpelledPitch>& pitches);

}  // namespace cahier
