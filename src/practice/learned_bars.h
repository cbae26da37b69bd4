// Which bars of a piece are learned, since when, and where: those of a return are learned where
// their source is. A bar outside the piece is one that is not learned.
#pragma once

#include <map>
#include <optional>
#include <vector>

#include "piece/piece.h"
#include "practice/record.h"

namespace cahier {

class LearnedBars {
 public:
  LearnedBars() = default;  // of a piece of which nothing is told
  explicit LearnedBars(const Piece& piece);
  // What a record tells of the piece with that index.
  LearnedBars(const Record& record, int index, const Piece& piece);

  // Bars learned at one time, as printed. What was learned before keeps its date.
  void learn(BarRange bars, Date date);

  // Of a bar as printed; nullopt when it is not learned.
  std::optional<Date> since(int bar) const;
  std::optional<int> first_unlearned(BarRange bars) const;

  // What was learned at one time, where it is learned, in rising order and without overlap.
  const std::vector<BarRange>& at_one_time() const { return at_one_time_; }
  // What is left to learn where it stands, as long stretches as can be, in rising order.
  std::vector<BarRange> unlearned() const;
  // Where the notes of these bars are learned: each once, in rising order.
  std::vector<BarRange> sources(BarRange bars) const;
  // Where the notes of this bar are learned.
  int source(int bar) const;

 private:
  int first_bar_ = 1;
  std::vector<int> source_;    // by bar as printed
  std::map<int, Date> since_;  // by bar where it is learned
  std::vector<BarRange> at_one_time_;
};

}  // namespace cahier
