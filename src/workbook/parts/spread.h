// Blocks of strips set on pages and spread evenly down each of them.
#pragma once

#include <functional>
#include <vector>

#include "workbook/parts/strip.h"

namespace cahier {

class Spread {
 public:
  // `open` opens the next page and returns the box to fill; it is called when the first block is
  // added, not before. What a page has left goes below its strips, at most `most_gap` each; the box
  // that a strip is drawn in is so much higher than the strip. A third of that is left below the
  // last one.
  Spread(std::function<Box()> open, double most_gap);

  // The strips below one another on one page; a block that is higher than the rest of the page
  // begins a new one, unless that would leave more than a third of the page empty. REQUIRES: the
  // heights are whole steps of the grid.
  void add(const std::vector<Strip>& block);
  // Whether a block fits on the current page below what is there. False before the first page.
  bool fits(double height) const;
  int pages() const { return pages_; }
  // Draws what stands on the current page. Call it once, at the end.
  void finish();

 private:
  void put(const Strip& strip);
  void turn();

  std::function<Box()> open_;
  double most_gap_;
  Box page_;
  std::vector<Strip> strips_;
  int pages_ = 0;
};

}  // namespace cahier
