// What a score leaves open, and what was assumed.
#pragma once

#include <string>
#include <vector>

namespace cahier {

struct ScoreWarning {
  int element = 0;  // measure element, from 1; 0 for the whole score
  std::string say;
};

class ScoreWarnings {
 public:
  // Keeps the first kMostScoreWarnings, and none twice.
  void add(int element, std::string say);
  // In the order of the score.
  std::vector<ScoreWarning> sorted() const;

 private:
  std::vector<ScoreWarning> all_;
};

}  // namespace cahier
