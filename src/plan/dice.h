// Fair choice among cue starts with things one finds at home.
#pragma once

#include <string>
#include <vector>

namespace cahier {

// One or more equal dice thrown in order; every ordered outcome is equally likely.
struct DiceTable {
  struct Row {
    int cue;                                 // number of the cue start
    std::vector<std::vector<int>> outcomes;  // each as long as `count`
  };
  std::string name = "2d6";
  int faces = 6;
  int count = 2;
  std::vector<Row> rows;
  std::vector<std::vector<int>> again;  // throw again
};

// Two six-sided dice in order, 36 outcomes, index (first - 1) * 6 + second: each cue gets
// floor(36 / n), in index order, and the rest say throw again. Beyond 36 cues the numbers are cut
// into tables of nearly equal length, each for a stretch of the piece.
std::vector<DiceTable> dice_tables(const std::vector<int>& cues);

// Expected throws until one that counts: 36 / (share * n).
double expected_throws(const DiceTable& table);

}  // namespace cahier
