#include "practice/metronome.h"

#include <algorithm>
#include <cmath>

namespace cahier {

double metronome_mark(double per_minute) {
  if (per_minute < kMetronomeMarks.front()) return std::max(10.0, std::floor(per_minute));
  const auto above =
      std::upper_bound(kMetronomeMarks.begin(), kMetronomeMarks.end(), std::floor(per_minute));
  return *std::prev(above);
}

}  // namespace cahier
