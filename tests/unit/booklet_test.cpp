#include "paper/booklet.h"

#include <deque>

#include "catch.h"

using namespace cahier;

namespace {

// Lays the sheets on one another as they come from the printer, folds the stack in the middle and
// reads it through: the left halves of the fronts come last.
std::vector<int> read_through(const std::vector<BookletSide>& sides) {
  std::deque<int> order;
  // From the innermost sheet outwards.
  for (std::size_t sheet = sides.size() / 2; sheet-- > 0;) {
    const BookletSide& front = sides[2 * sheet];
    const BookletSide& back = sides[2 * sheet + 1];
    order.push_front(back.left);
    order.push_front(front.right);
    order.push_back(back.right);
    order.push_back(front.left);
  }
  return {order.begin(), order.end()};
}

}  // namespace

TEST_CASE("the pages of a booklet lie as printers lay them") {
  // Common practice: eight pages lie 8 and 1, 2 and 7, 6 and 3, 4 and 5.
  CHECK(booklet_sides(8) == std::vector<BookletSide>{{8, 1}, {2, 7}, {6, 3}, {4, 5}});
  CHECK(booklet_sides(1) == std::vector<BookletSide>{{0, 1}, {0, 0}});
}

TEST_CASE("a folded booklet reads from the first page to the last, empty pages at the end") {
  for (int pages = 1; pages <= 120; ++pages) {
    const std::vector<int> read = read_through(booklet_sides(pages));
    REQUIRE(static_cast<int>(read.size()) % 4 == 0);
    REQUIRE(static_cast<int>(read.size()) - pages < 4);
    for (int at = 0; at < static_cast<int>(read.size()); ++at)
      CHECK(read[at] == (at < pages ? at + 1 : 0));
  }
}
