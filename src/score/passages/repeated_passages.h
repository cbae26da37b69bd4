// Passages of a row that come back, found with a suffix automaton.
#pragma once

#include <vector>

namespace cahier {

// `length` items from `first` on that stood already from `source` on, which is the earliest place.
// Indices from 0; the two do not overlap.
struct RepeatedPassage {
  int first = 0;
  int source = 0;
  int length = 0;
  bool operator==(const RepeatedPassage&) const = default;
};

// Every passage of `least` items or more that ends where it can be followed no further and begins
// as early as it has been there before: maximal in both directions. A row that repeats itself at
// once (abababab) is told period by period. In the order of their ends; takes time in proportion to
// the row, but for the logarithm of a map. (Blumer and others, The smallest automaton recognizing
// the subwords of a text, 1985.) REQUIRES: least >= 1.
std::vector<RepeatedPassage> repeated_passages(const std::vector<int>& row, int least);

}  // namespace cahier
