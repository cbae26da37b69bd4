#include "text/line_part.h"

#include <algorithm>
#include <utility>

namespace cahier {

LinePart part_of_line(std::vector<char32_t> line, std::size_t caret, std::size_t width) {
  constexpr char32_t kEllipsis = U'…';
  caret = std::min(caret, line.size());
  if (line.size() <= width) return {std::move(line), caret};
  const std::size_t half = width / 2;
  std::size_t start = caret > half ? caret - half : 0;
  start = std::min(start, line.size() - width);
  LinePart part{{line.begin() + static_cast<std::ptrdiff_t>(start),
                 line.begin() + static_cast<std::ptrdiff_t>(start + width)},
                caret - start};
  if (start > 0) part.characters.front() = kEllipsis;
  if (start + width < line.size()) part.characters.back() = kEllipsis;
  return part;
}

}  // namespace cahier
