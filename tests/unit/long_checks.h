// Whether the long checks are run: sweeps over random cases then go further.
#pragma once

#include <cstdlib>

namespace cahier::sample {

inline bool in_long_checks() { return std::getenv("CAHIER_LONG") != nullptr; }

}  // namespace cahier::sample
