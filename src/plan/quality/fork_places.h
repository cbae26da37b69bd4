// The forks that are to be drilled: where passages that begin alike part ways.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

struct ForkPlaces {
  struct Way {
    BarRange passage;
    int at = 0;  // the bar where it goes on its own way
  };
  std::vector<Way> ways;  // at least two
};

// Those that the piece file names.
std::vector<ForkPlaces> fork_places(const PlannedPiece& planned);

}  // namespace cahier
