#include "practice/beat_units.h"

#include <algorithm>
#include <cmath>

#include "practice/metronome.h"

namespace cahier {
namespace {

int sixteenths(double quarters) { return static_cast<int>(std::lround(quarters * 4)); }

bool divides(Beat unit, const CountedMusic& music) {
  return sixteenths(quarters(music.beat)) % sixteenths(quarters(unit)) == 0;
}

// Whether the unit is a whole number of beats, and the bar a whole number of units.
bool gathers(Beat unit, const CountedMusic& music) {
  return sixteenths(quarters(unit)) % sixteenths(quarters(music.beat)) == 0 &&
         sixteenths(music.bar_quarters) % sixteenths(quarters(unit)) == 0;
}

bool within_reach(Beat unit, const CountedMusic& music) {
  return music.quarters_per_minute / quarters(unit) <= kMetronomeMarks.back();
}

}  // namespace

std::optional<Beat> common_unit(const std::vector<CountedMusic>& music) {
  if (music.empty()) return std::nullopt;
  const auto counts = [&](Beat unit) {
    return std::all_of(music.begin(), music.end(), [&](const CountedMusic& one) {
      return (divides(unit, one) || gathers(unit, one)) && within_reach(unit, one);
    });
  };
  // Mostly all is counted in one beat already: the longest unit that divides it.
  const Beat beat = music.front().beat;
  if (std::all_of(music.begin(), music.end(), [&](const CountedMusic& one) {
        return one.beat == beat && within_reach(beat, one);
      }))
    return beat;
  std::optional<Beat> dividing;
  std::optional<Beat> longer;
  for (const Beat unit : {Beat::eighth, Beat::dotted_eighth, Beat::quarter, Beat::dotted_quarter,
                          Beat::half, Beat::dotted_half}) {
    if (!counts(unit)) continue;
    if (std::all_of(music.begin(), music.end(),
                    [&](const CountedMusic& one) { return divides(unit, one); }))
      dividing = unit;
    else if (!longer)
      longer = unit;
  }
  return dividing ? dividing : longer;
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
