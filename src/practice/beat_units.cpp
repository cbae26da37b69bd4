#include "practice/beat_units.h"

#include <cmath>
#include <numeric>

#include "practice/metronome.h"

namespace cahier {
namespace {

int sixteenths(Beat beat) { return static_cast<int>(std::lround(quarters(beat) * 4)); }

}  // namespace

std::optional<Beat> common_beat(Beat one, Beat other) {
  const int common = std::gcd(sixteenths(one), sixteenths(other));
  for (const Beat beat : {Beat::eighth, Beat::dotted_eighth, Beat::quarter, Beat::dotted_quarter,
                          Beat::half, Beat::dotted_half})
    if (sixteenths(beat) == common) return beat;
  return std::nullopt;
}

double counted_in(const Tempo& tempo, Beat unit, bool exact) {
  if (unit == tempo.beat) return tempo.per_minute;
  // A mark that is converted must not fall to the next lower one by rounding noise.
  constexpr double kRounding = 1e-9;
  const double beats = tempo.quarters_per_minute() / quarters(unit) + kRounding;
  if (exact || beats > kMetronomeMarks.back()) return std::floor(beats * 100) / 100;
  return metronome_mark(beats);
}

}  // namespace cahier
