// One fault that the checker finds in a plan.
#pragma once

#include <string>

namespace cahier {

struct Violation {
  int rule;  // 1 … 10, as numbered in DEVELOPERS.md; 0 when the plan contradicts its own form
  std::string what;  // in words, with dates and bars
};

}  // namespace cahier
