#include "practice/clean_run_odds.h"

#include <cmath>
#include <vector>

#include "practice/numbers.h"

namespace cahier {
namespace {

// The chance of at most `slips` slips in `runs` runs, each clean with chance `clean` (0 < clean <
// 1).
double chance_of_as_good(int runs, int slips, double clean) {
  double sum = 0;
  double log_ways = 0;
  for (int slipped = 0; slipped <= slips; ++slipped) {
    if (slipped > 0) log_ways += std::log(static_cast<double>(runs - slipped + 1) / slipped);
    sum += std::exp(log_ways + slipped * std::log1p(-clean) + (runs - slipped) * std::log(clean));
  }
  return sum;
}

}  // namespace

double clean_run_bound(int runs, int slips) {
  if (slips >= runs) return 0;
  if (slips == 0) return std::pow(numbers::kDoubt, 1.0 / runs);
  double low = 0;
  double high = 1;
  while (true) {
    const double middle = (low + high) / 2;
    if (middle <= low || middle >= high) return low;
    (chance_of_as_good(runs, slips, middle) < numbers::kDoubt ? low : high) = middle;
  }
}

int runs_needed(double chance, int slips) {
  int too_few = slips;
  int enough = slips + 1;
  while (clean_run_bound(enough, slips) < chance) {
    too_few = enough;
    enough *= 2;
  }
  while (enough - too_few > 1) {
    const int middle = too_few + (enough - too_few) / 2;
    (clean_run_bound(middle, slips) < chance ? too_few : enough) = middle;
  }
  return enough;
}

double streak_chance(int streak, int tries, double clean) {
  // by_length[n]: no streak yet, and the last n runs were clean.
  std::vector<double> by_length(static_cast<std::size_t>(streak), 0.0);
  by_length[0] = 1;
  double met = 0;
  for (int run = 0; run < tries; ++run) {
    met += by_length.back() * clean;
    double slipped = 0;
    for (const double chance : by_length) slipped += chance * (1 - clean);
    for (std::size_t length = by_length.size() - 1; length > 0; --length)
      by_length[length] = by_length[length - 1] * clean;
    by_length[0] = slipped;
  }
  return met;
}

}  // namespace cahier
