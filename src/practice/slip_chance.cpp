// A Beta prior is conjugate to Bernoulli trials: with mean m and weight w, s slips in n trials give
// the posterior mean (w m + s) / (w + n) (Gelman et al., Bayesian Data Analysis, 3rd edition,
// section 2.4).
#include "practice/slip_chance.h"

namespace cahier {

double slip_chance(const Method& method, int level, const SlipCount& count) {
  const double prior = method.slip_weight * method.slip_chance[level - 1];
  return (prior + count.slips) / (method.slip_weight + count.trials);
}

int weakness(const Method& method, int level, const SlipCount& count) {
  const double chance = slip_chance(method, level, count);
  int weak = level;
  while (weak < static_cast<int>(method.slip_chance.size()) && count.slips > 0 &&
         chance >= method.slip_chance[weak])
    ++weak;
  return weak;
}

}  // namespace cahier
