// How likely a passage slips, and how weak that makes it.
#pragma once

#include "practice/method.h"

namespace cahier {

// How often a passage was played from memory, and how often it slipped.
struct SlipCount {
  int trials = 0;
  int slips = 0;
};

// The posterior mean of the chance of a slip: Beta prior with the method's mean for the level and
// the method's weight, Bernoulli trials. The source is in slip_chance.cpp.
double slip_chance(const Method& method, int level, const SlipCount& count);

// The level of weakness: the hardest whose own chance of a slip is reached, and never below the
// level that the piece gives. That of the piece without any trial.
int weakness(const Method& method, int level, const SlipCount& count);

}  // namespace cahier
