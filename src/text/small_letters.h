// Texts compared without regard to capitals.
#pragma once

#include <string>
#include <string_view>

namespace cahier {

// With A to Z as a to z; other letters stay as they are.
inline std::string in_small_letters(std::string_view text) {
  std::string small(text);
  for (char& letter : small)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  return small;
}

}  // namespace cahier
