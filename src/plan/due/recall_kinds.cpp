#include "plan/due/recall_kinds.h"

namespace cahier {

Task recall_turn(const PieceProgress& progress, BarRange bars, const std::vector<int>& chunks,
                 int turn, int day, double room) {
  const int kind = turn % 3;
  if (kind != 2) {
    const Drill drill = kind == 0 ? Drill::slow_pass : Drill::counted_pass;
    if (progress.make.minutes(drill, bars) <= room) return progress.make.of_bars(drill, bars);
  }
  return progress.make.recall(bars, progress.recalls.tempo_progress(chunks, day));
}

}  // namespace cahier
