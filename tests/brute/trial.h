// One tiny work, put to the oracle and to the planner.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "tiny_work.h"

namespace cahier::brute {

// One work within one allowance.
struct Asked {
  int halves = 0;
  bool exists = false;   // says the oracle
  bool planned = false;  // says the planner
};

struct Trial {
  std::string name;
  std::optional<int> least;    // half minutes a day for which a plan exists
  std::optional<int> planned;  // half minutes for which the planner first finds one, from there on
  std::vector<Asked> asked;
  std::vector<std::string> faults;    // of the oracle, or of a plan that is said to fit
  std::vector<std::string> hangs_on;  // of a miss at the least: what a plan cannot do without
};

// Asks at and around the least allowance, around the planner's least, and for usual minutes.
Trial tried(const TinyWork& work);

}  // namespace cahier::brute
