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
    bool operator==(const Row&) const = default;
  };
  std::string name = "2d6";  // count and faces: "1d6", "1d20", "5d2" for five coins
  int faces = 6;
  int count = 2;
  std::vector<Row> rows;
  std::vector<std::vector<int>> again;  // throw again
  bool operator==(const DiceTable&) const = default;
};

// A cue start that is thrown for, and its share: one of weight 2 comes up twice as often as one of
// weight 1.
struct ThrownCue {
  int number = 1;
  int weight = 1;  // at least 1
  int bar = 0;
};

// The outcomes in order, the first throw counting most ((first - 1) * 6 + second for two dice): of
// N outcomes each cue gets its weight times floor(N / sum of the weights), and the rest say throw
// again. N is 36 for two dice, 6 for one die, 20 for the die of twenty faces; of coins there are as
// few as keep the throws to be expected at 1.5 or less, and six at most. Where the weights sum to
// more than N (64 for coins) the cues are cut by their bars into tables of nearly equal weight,
// each for a stretch of the piece. Rows are by number. REQUIRES: no weight is larger than N.
std::vector<DiceTable> weighted_dice_tables(std::vector<ThrownCue> cues,
                                            Throw thrown = Throw::two_dice);
// The same for cues of equal weight, by their numbers, which are in bar order.
std::vector<DiceTable> dice_tables(const std::vector<int>& cues, Throw thrown = Throw::two_dice);

// Expected throws until one that counts: N over the outcomes that count.
double expected_throws(const DiceTable& table);

}  // namespace cahier
