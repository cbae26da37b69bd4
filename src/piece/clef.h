// Clefs, by the words a piece file names them with.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace cahier {

// An 8 below or above: sounding an octave lower or higher.
enum class Clef {
  treble,
  bass,
  alto,
  tenor,
  treble_8_below,
  treble_8_above,
  bass_8_below,
  percussion
};

// "treble", "treble 8 below" …, in the order of the enumeration.
const std::vector<std::string>& clef_words();
std::optional<Clef> parse_clef(std::string_view text);

}  // namespace cahier
