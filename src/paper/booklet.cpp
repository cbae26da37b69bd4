#include "paper/booklet.h"

namespace cahier {

std::vector<BookletSide> booklet_sides(int pages) {
  const int places = (pages + 3) / 4 * 4;
  const auto filled = [pages](int page) { return page <= pages ? page : 0; };
  std::vector<BookletSide> sides;
  // From outside inwards: the first and the last page that are still left share a side.
  for (int first = 1, last = places; first < last; first += 2, last -= 2) {
    sides.push_back({filled(last), filled(first)});
    sides.push_back({filled(first + 1), filled(last - 1)});
  }
  return sides;
}

}  // namespace cahier
