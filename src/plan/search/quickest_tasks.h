// Which tasks play what must be played of a short piece in the least time.
#pragma once

#include <vector>

#include "plan/search/tiny_piece.h"

namespace cahier {

// Passages played in some tasks, and those among them that a task begins with.
struct Played {
  Mask passages = 0;
  Mask begins = 0;
  double minutes = 0;
};

// The quickest tasks over passages of `learned` chunks that play all the `wanted` chunks where they
// stand, and go across the `open` joins; `minutes` by first and last passage. Their minutes are
// infinite where there are none.
Played quickest_tasks(const TinyPiece& piece, Mask learned, Mask wanted, Mask open,
                      const std::vector<std::vector<double>>& minutes);

// The joins that they go across.
Mask joined_by(const TinyPiece& piece, const Played& tasks);

// The bars of each.
std::vector<BarRange> bars_of(const Played& tasks, const TinyPiece& piece,
                              const Analysis& analysis);

}  // namespace cahier
