// Rule 5 and the end of learning on one calendar, read anew from the rules.
#pragma once

#include <vector>

#include "plan/terms.h"

namespace cahier::brute {

// Only practice days count here, by their position; `end()` stands for the date.
struct Deadlines {
  explicit Deadlines(const Terms& terms);

  int end() const { return static_cast<int>(room.size()); }

  std::vector<int> room;             // half minutes
  std::vector<char> may_learn;       // nothing new in the last days
  std::vector<int> after_learning;   // the last position at which the first recall is in time
  std::vector<int> after_retrieval;  // the same for the next one; `end()` when none is needed
  int longest = 0;                   // half minutes
};

}  // namespace cahier::brute
