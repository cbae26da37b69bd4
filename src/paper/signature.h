// Key and meter signatures of one staff.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "paper/music_glyphs.h"

namespace cahier {

struct StaffMeter {
  std::string count = "4";  // "2+3"
  int unit = 4;
  bool operator==(const StaffMeter&) const = default;
};

// Half-spaces above the middle line of each accidental, in order; sharps for positive fifths.
// Empty for percussion and for 0. REQUIRES: -7 <= fifths <= 7.
std::vector<int> key_signature_positions(StaffClef clef, int fifths);

// What is written where a key or a meter begins: naturals for what `cancelled` has and `fifths`
// does not, the key, the meter.
struct Signature {
  std::optional<int> fifths;
  int cancelled = 0;  // the key signature before
  std::optional<StaffMeter> meter;
};

// The signature's outline; y = 0 is the staff's middle line, the ink begins at x = 0. Empty, and 0
// wide, when there is nothing to write.
MusicGlyph signature_glyph(const Typefaces& typefaces, StaffClef clef, const Signature& signature,
                           double space);

}  // namespace cahier
