#include "score/level/bar_level.h"

#include <algorithm>
#include <cmath>

#include "score/level/level_weights.h"

namespace cahier {

int level_of(const BarMeasures& measures) {
  using namespace level_weights;
  const double points = kOnset * measures.onsets + kChordNote * std::max(0, measures.chord - 1) +
                        kSpread * measures.spread + kLeap * measures.leaps +
                        kAccidental * measures.accidentals + kApart * measures.apart -
                        (measures.met ? kMet : 0);
  constexpr double kSliver = 1e-9;  // of rounding
  return static_cast<int>(std::clamp(std::floor(1 + points + kSliver), 1.0, 5.0));
}

std::vector<std::vector<int>> bar_levels(const Score& score) {
  std::vector<std::vector<int>> levels;
  for (const std::vector<BarMeasures>& hands : measure_bars(score)) {
    std::vector<int> of_bar;
    for (const BarMeasures& measures : hands) of_bar.push_back(level_of(measures));
    levels.push_back(std::move(of_bar));
  }
  return levels;
}

}  // namespace cahier
