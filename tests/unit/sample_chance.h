// Chance for tests, from a seed: the same numbers with every compiler and library, which the
// distributions of <random> do not promise.
#pragma once

#include <cmath>
#include <random>

namespace cahier::sample {

class Chance {
 public:
  explicit Chance(unsigned seed) : engine_(seed) {}

  // Between 0 and 1, never either.
  double uniform() { return (static_cast<double>(engine_()) + .5) / 4294967296.; }
  double between(double least, double most) { return least + (most - least) * uniform(); }
  // A whole number from `least` to `most`.
  int number(int least, int most) {
    return least + static_cast<int>(engine_() % static_cast<unsigned>(most - least + 1));
  }
  bool happens(double probability) { return uniform() < probability; }
  // About nothing, with a spread of one (Box, Muller 1958, Annals of Mathematical Statistics
  // 29:610-611; value from memory).
  double normal() {
    const double radius = std::sqrt(-2 * std::log(uniform()));
    return radius * std::cos(2 * std::acos(-1.) * uniform());
  }

 private:
  std::mt19937 engine_;
};

}  // namespace cahier::sample
