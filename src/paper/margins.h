// The clear edges of a page.
#pragma once

#include "paper/geometry.h"
#include "paper/page_size.h"

namespace cahier {

// Millimetres. The punched side is the left of odd pages and the right of even ones (printed on
// both sides). ISO 838 holes stand 12 mm from the edge: 20 mm keep clear of them. A page turned
// sideways is bound with its top at the left of an upright one (common practice), so that its
// punched side is the top of odd pages and the bottom of even ones.
struct Margins {
  double punched = 20;
  double outer = 10;
  double top = 10;
  double bottom = 10;

  // The printable area of a page; pages count from 1.
  Box inside(PageSize size, int page) const {
    const double first = page % 2 == 1 ? punched : outer;
    if (size.width > size.height)
      return {bottom, first, size.width - top - bottom, size.height - punched - outer};
    return {first, top, size.width - punched - outer, size.height - top - bottom};
  }
};

}  // namespace cahier
