// Fair choice among cue starts with things one finds at home.
#pragma once

#include <string>
#include <vector>

#include "piece/wishes.h"

namespace cahier {

// One or more equal dice thrown in order; every ordered outcome is equally likely. A coin is a die
// of two faces: 1 is heads, 2 is tails.
struct DiceTable {
  struct Row {
    int cue;                                 // number of the cue start
    std::vector<std::vector<int>> outcomes;  // each as long as `count`
  };
  std::string name = "2d6";  // count and faces: "1d6", "1d20", "5d2" for five coins
  int faces = 6;
  int count = 2;
  std::vector<Row> rows;
  std::vector<std::vector<int>> again;  // throw again
};

// The outcomes in order, the first throw counting most ((first - 1) * 6 + second for two dice): of
// N outcomes each of n cues gets floor(N / n), and the rest say throw again. N is 36 for two dice,
// 6 for one die, 20 for the die of twenty faces; of coins there are as few as keep the throws to be
// expected at 1.5 or less, and six at most. Beyond N cues (64 for coins) the numbers are cut into
// tables of nearly equal length, each for a stretch of the piece.
std::vector<DiceTable> dice_tables(const std::vector<int>& cues, Throw thrown = Throw::two_dice);

// Expected throws until one that counts: N / (share * n).
double expected_throws(const DiceTable& table);

}  // namespace cahier
