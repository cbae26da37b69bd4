// Key signatures as musicians write them.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace cahier {

struct Key {
  int fifths = 0;  // sharps positive, flats negative, -7 … 7
  std::string
      text;  // as it is to be printed: "B♭ major", "2 flats"; never a mode that was not given
  bool operator==(const Key&) const = default;
};

// "A minor", "B flat major", "F# minor", "E♭ major", "2 flats", "1 sharp", "no sharps or flats".
// A key with more than seven accidentals, or a bare letter, is refused.
std::optional<Key> parse_key(std::string_view text);

}  // namespace cahier
