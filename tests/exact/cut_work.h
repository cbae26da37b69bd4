// A small work cut into chunks, and the passages that it then consists of.
#pragma once

#include <vector>

#include "small_work.h"

namespace exact {

// A chunk where it stands, or where a return brings it.
struct Passage {
  Bars bars;
  int chunk = 0;
  int join = -1;  // the boundary at its end, by its number; -1 at the end of the piece
};

struct CutWork {
  std::vector<Bars> chunks;
  std::vector<int> levels;  // by chunk
  std::vector<Passage> passages;
  int joins = 0;  // different boundaries: one inside a return is that of its source

  // The hardest level of so many passages.
  int level(int first, int count) const;
  Bars bars(int first, int count) const;
};

// Every way of cutting the work that rule 1 allows.
std::vector<std::vector<Bars>> ways_to_cut(const SmallWork& work, int least, int most);

// REQUIRES: chunks that rule 1 allows, in order.
CutWork cut(const SmallWork& work, const std::vector<Bars>& chunks);

}  // namespace exact
