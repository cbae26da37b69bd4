// The part of a very long line that is worth showing.
#pragma once

#include <cstddef>
#include <vector>

namespace cahier {

struct LinePart {
  std::vector<char32_t> characters;
  std::size_t caret;  // index; may be one past the end
};

// At most `width` characters of a line with the caret inside, cut ends shown as an ellipsis.
LinePart part_of_line(std::vector<char32_t> line, std::size_t caret, std::size_t width);

}  // namespace cahier
