// Passages that are nearly the same, and where they part.
#pragma once

#include <string>
#include <vector>

#include "score/passages/bar_notes.h"
#include "score/passages/score_returns.h"

namespace cahier {

// Two passages of the same number of bars; bars by their index, from 0.
struct ScoreLookAlikes {
  int first = 0;           // of the earlier passage
  int later = 0;           // of the later one
  int length = 0;          // bars of each
  int fork = 0;            // bars from the beginning to the one in which they part
  double beat = 1;         // of that bar, from 1, as its meter is commonly counted
  std::vector<int> hands;  // that part there, as indices in score.hands
  int transposed = 0;      // semitones by which all of the later one is higher
  std::string difference;  // in words, what the later one has there
  double danger = 0;       // 0 to 1: the longer alike before the fork, and the more alike there
};

inline constexpr double kLeastLikeness = 0.6;  // of bars that are nearly the same
inline constexpr int kMostPassageBars = 256;
inline constexpr std::size_t kMostLookAlikes = 1000;

// Of two bars to kMostPassageBars, the most dangerous first; at most kMostLookAlikes. A return that
// goes on in another way than its source parts in the bar after it.
std::vector<ScoreLookAlikes> find_look_alikes(const Score& score, const std::vector<BarNotes>& bars,
                                              const std::vector<ScoreReturn>& returns);

}  // namespace cahier
