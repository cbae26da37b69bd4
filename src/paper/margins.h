// The clear edges of a page.
#pragma once

#include "paper/geometry.h"
#include "paper/page_size.h"

namespace cahier {

// Millimetres. The punched side is the left of odd pages and the right of even ones (printed on
// both sides). ISO 838 holes stand 12 mm from the edge: 20 mm keep clear of them.
struct Margins {
  double punched = 20;
  double outer = 10;
  double top = 10;
  double bottom = 10;

  // The printable area of a page; pages count from 1.
  Box inside(PageSize size, int page) const {
    const double left = page % 2 == 1 ? punched : outer;
    return {left, top, size.width - punched - outer, size.height - top - bottom};
  }
};

}  // namespace cahier
