#include "piece/clef.h"

#include <algorithm>

namespace cahier {

const std::vector<std::string>& clef_words() {
  static const std::vector<std::string> words = {"treble",       "bass",           "alto",
                                                 "tenor",        "treble 8 below", "treble 8 above",
                                                 "bass 8 below", "percussion"};
  return words;
}

std::optional<Clef> parse_clef(std::string_view text) {
  const auto& words = clef_words();
  const auto found = std::find(words.begin(), words.end(), text);
  if (found == words.end()) return std::nullopt;
  return static_cast<Clef>(found - words.begin());
}

}  // namespace cahier
