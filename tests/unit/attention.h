// How much attention a plan gives to each bar.
//
// A turn is one task that plays, speaks or writes the bar, however often the task repeats it: a
// recall, a slow or counted pass, a join, a spoken part or a write-out of bars that hold it. Of cue
// starts, each start that is assigned is a turn for the bars from it to the end of the chunk that
// it begins in, and each throw of the dice the share of a turn that the outcomes give to each
// start. Learning, run-throughs and what
// is played in the head are no turns: they touch every bar alike. A turn in a return is
// one for the bars whose notes it has.
#pragma once

#include <algorithm>
#include <vector>

#include "plan/plan.h"

namespace cahier::sample {

class Attention {
 public:
  explicit Attention(const PlannedPiece& planned)
      : planned_(planned), turns_(static_cast<std::size_t>(planned.piece.bars) + 1, 0) {}

  void add(const Task& task) {
    if (task.drill == Drill::learn || task.drill == Drill::run_through ||
        task.drill == Drill::silent_run)
      return;
    if (task.drill != Drill::cue_starts) return add(task.bars, 1);
    for (const int number : task.cues) add_start(number, 1);
    for (const DiceTable& table : planned_.dice) {
      std::size_t counted = 0;
      for (const DiceTable::Row& row : table.rows) counted += row.outcomes.size();
      for (const DiceTable::Row& row : table.rows)
        add_start(row.cue, static_cast<double>(task.throws * row.outcomes.size()) /
                               static_cast<double>(counted * planned_.dice.size()));
    }
  }

  // By bar, where it is learned.
  const std::vector<double>& turns() const { return turns_; }

 private:
  void add(BarRange bars, double turns) {
    for (int bar = bars.first; bar <= bars.last; ++bar)
      turns_[planned_.piece.learned_bar(bar)] += turns;
  }

  void add_start(int number, double turns) {
    const int bar = planned_.piece.learned_bar(planned_.cues[number - 1].bar);
    for (const Chunk& chunk : planned_.chunks)
      if (chunk.bars.contains(bar)) add({bar, chunk.bars.last}, turns);
  }

  const PlannedPiece& planned_;
  std::vector<double> turns_;
};

}  // namespace cahier::sample
