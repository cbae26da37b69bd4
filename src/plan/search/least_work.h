// What a piece asks for at the very least, however it is cut and whatever the calendar is.
#pragma once

#include <set>

#include "plan/terms.h"

namespace cahier {

// A task that a day may be filled with.
struct Portion {
  int halves = 0;   // half minutes it takes
  ByLevel notes{};  // minutes of it at the notes themselves, without setup and pauses, by level

  auto operator<=>(const Portion&) const = default;
};

// All in minutes. Sums are the least over all ways of cutting the piece into chunks.
struct LeastWork {
  double learning = 0;
  double largest = 0;        // the largest task of learning
  double once_through = 0;   // playing all that is learned once more from memory, for its joins
  double run = 0;            // a run-through
  double recall = 0;         // the shortest recall there can be
  ByLevel notes{};           // learning, as in Portion
  std::set<Portion> chunks;  // all that there can be
};

LeastWork least_work(const Piece& piece, const Terms& terms);

}  // namespace cahier
