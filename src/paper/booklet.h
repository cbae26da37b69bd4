// The order of pages on sheets that are laid on one another and folded in the middle.
#pragma once

#include <vector>

namespace cahier {

// One side of a sheet: the pages on its left and right half, counted from 1; 0 for an empty one.
struct BookletSide {
  int left = 0;
  int right = 0;
  bool operator==(const BookletSide&) const = default;
};

// The sides in the order they are printed, front and back of the outermost sheet first. Printed on
// both sides, turned over on the short edge, the stack is folded once and reads from page 1 on.
// There are as many sides as pages need, four pages a sheet (common practice). REQUIRES: pages > 0.
std::vector<BookletSide> booklet_sides(int pages);

}  // namespace cahier
