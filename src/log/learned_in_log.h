// What is learned so far in a log that is being read, and where the log says so, for its messages.
#pragma once

#include <map>
#include <optional>
#include <utility>
#include <vector>

#include "log/log_faults.h"
#include "piece/piece.h"
#include "practice/learned_bars.h"

namespace cahier {

class LearnedInLog {
 public:
  struct Line {
    Spot spot;
    bool by_code = false;
  };

  explicit LearnedInLog(const std::vector<Piece>& pieces) : bars_(pieces.begin(), pieces.end()) {}

  const LearnedBars& of(int piece) const { return bars_[piece]; }

  // The line that says that a bar is learned; nullptr where none does.
  const Line* line(int piece, int bar) const {
    const auto found = lines_.find({piece, source(piece, bar)});
    return found == lines_.end() ? nullptr : &found->second;
  }

  // `line` is none where it is not the log that says so. What was learned before stays as it was.
  void learn(int piece, BarRange bars, Date date, const std::optional<Line>& line) {
    for (int bar = bars.first; line && bar <= bars.last; ++bar)
      if (!bars_[piece].since(bar)) lines_.emplace(std::pair{piece, source(piece, bar)}, *line);
    bars_[piece].learn(bars, date);
  }

 private:
  int source(int piece, int bar) const { return bars_[piece].sources({bar, bar}).front().first; }

  std::vector<LearnedBars> bars_;              // by piece
  std::map<std::pair<int, int>, Line> lines_;  // by piece and bar where it is learned
};

}  // namespace cahier
