// Which bars of a log are learned, and since when.
#pragma once

#include <map>
#include <optional>
#include <set>
#include <vector>

#include "log/log_faults.h"
#include "piece/piece.h"

namespace cahier {

class LearnedBars {
 public:
  struct Since {
    Date date;
    std::optional<Spot> spot;  // empty when no line of the log says so
    bool by_code = false;
  };

  // REQUIRES: pieces outlive this object.
  explicit LearnedBars(const std::vector<Piece>& pieces) : pieces_(pieces), of_(pieces.size()) {}

  // A bar of a return is learned where its source is.
  const Since* since(int piece, int bar) const {
    const auto found = of_[piece].find(pieces_[piece].learned_bar(bar));
    return found == of_[piece].end() ? nullptr : &found->second;
  }

  std::optional<int> first_unlearned(int piece, BarRange bars) const {
    for (int bar = bars.first; bar <= bars.last; ++bar)
      if (!since(piece, bar)) return bar;
    return std::nullopt;
  }

  void learn(int piece, BarRange bars, const Since& since) {
    for (int bar = bars.first; bar <= bars.last; ++bar)
      of_[piece].emplace(pieces_[piece].learned_bar(bar), since);
  }

  // The bars that are learned for these, each once, in rising order.
  std::vector<BarRange> sources(int piece, BarRange bars) const {
    std::set<int> all;
    for (int bar = bars.first; bar <= bars.last; ++bar) all.insert(pieces_[piece].learned_bar(bar));
    return ranges_of(all);
  }

  // What is left to learn, in rising order.
  std::vector<BarRange> unlearned(int piece) const {
    const BarRange whole = pieces_[piece].whole();
    std::set<int> all;
    for (int bar = whole.first; bar <= whole.last; ++bar)
      if (!since(piece, bar)) all.insert(pieces_[piece].learned_bar(bar));
    return ranges_of(all);
  }

 private:
  static std::vector<BarRange> ranges_of(const std::set<int>& bars) {
    std::vector<BarRange> ranges;
    for (const int bar : bars)
      if (!ranges.empty() && ranges.back().last + 1 == bar)
        ranges.back().last = bar;
      else
        ranges.push_back({bar, bar});
    return ranges;
  }

  const std::vector<Piece>& pieces_;
  std::vector<std::map<int, Since>> of_;  // by piece, by source bar
};

}  // namespace cahier
