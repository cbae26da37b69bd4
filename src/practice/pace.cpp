// The model: log ratio = player + level + time, each normal about nothing with the spread that the
// method gives. The estimate is the mean of player + level after the samples, in closed form: a
// normal mean with known variances, taken once for the levels and once for the player (conjugate;
// Gelman, Carlin, Stern, Dunson, Vehtari, Rubin, Bayesian Data Analysis, 3rd edition, section 2.5
// and chapter 5). With few samples it stays near the method's number; it is also the best linear
// unbiased prediction of this model (Robinson 1991, Statistical Science 6:15-32).
#include "practice/pace.h"

#include <array>
#include <cmath>

#include "practice/numbers.h"

namespace cahier {
namespace {

// A ratio beyond this is taken for it: a pause for lunch must not pace a season.

struct LevelMean {
  double weight = 0;
  double mean = 0;  // of the log ratios
};

std::array<LevelMean, 5> means_by_level(const std::vector<PaceSample>& samples) {
  std::array<LevelMean, 5> levels{};
  for (const PaceSample& sample : samples) {
    LevelMean& level = levels[sample.level - 1];
    const double ratio =
        std::fmin(numbers::kMostPaceRatio, std::fmax(1 / numbers::kMostPaceRatio, sample.ratio));
    level.weight += sample.weight;
    level.mean += sample.weight * std::log(ratio);
  }
  for (LevelMean& level : levels)
    if (level.weight > 0) level.mean /= level.weight;
  return levels;
}

}  // namespace

ByLevel learn_pace(const Method& method, const std::vector<PaceSample>& samples) {
  const double players = std::pow(method.pace_of_players, 2);
  const double between_levels = std::pow(method.pace_of_levels, 2);
  const double times = std::pow(method.pace_of_times, 2);
  const auto levels = means_by_level(samples);
  double precision = 1 / players;
  double sum = 0;
  for (const LevelMean& level : levels) {
    if (level.weight <= 0) continue;
    const double variance = between_levels + times / level.weight;
    precision += 1 / variance;
    sum += level.mean / variance;
  }
  const double player = sum / precision;
  ByLevel pace{};
  for (std::size_t i = 0; i < pace.size(); ++i) {
    const LevelMean& level = levels[i];
    const double trust =
        level.weight > 0 ? between_levels / (between_levels + times / level.weight) : 0;
    pace[i] = std::exp(player + trust * (level.mean - player));
  }
  return pace;
}

}  // namespace cahier
