// Content set from the top of a page downwards on the grid, and on to the next page.
#pragma once

#include <algorithm>
#include <functional>

#include "paper/geometry.h"

namespace cahier {

class Flow {
 public:
  // `open` opens the next page (or column) and returns the box to fill. It may first draw what is
  // repeated there, a table's head for instance, and return what is left below. It is called when
  // the first content is asked for, not before.
  explicit Flow(std::function<Box()> open);

  // Whether `height` millimetres fit on the current page below what is there already. False before
  // the first page is open.
  bool fits(double height) const;
  // Whether nothing has been set on the current page yet. True before the first page is open.
  bool at_top() const { return used_ <= 0; }
  // Millimetres left on the current page; 0 before the first page is open.
  double left() const { return is_open_ ? std::max(0.0, page_.height - used_) : 0; }

  // The next `height` millimetres, as wide as the page; on a new page when they do not fit on this
  // one. What is higher than a whole page starts at the top of one and sticks out below.
  Box take(double height);
  // White space. None at the top of a page, and no more than the page has left.
  void skip(double height);
  // The next content stands on a new page, unless this one is empty still.
  void next_page();

 private:
  void open();

  std::function<Box()> open_;
  Box page_;
  double used_ = 0;
  bool is_open_ = false;
};

}  // namespace cahier
