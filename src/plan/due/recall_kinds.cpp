#include "plan/due/recall_kinds.h"

namespace cahier {

Task recall_turn(const PieceProgress& progress, BarRange bars, const std::vector<int>& chunks,
                 int turn, int day, double room) {
  const int kind = turn % 3;
  if (kind != 2) {
    Task task = kind == 0 ? progress.make.slow_pass(bars) : progress.make.counted_pass(bars);
    if (task.minutes <= room) return task;
  }
  return progress.make.recall(bars, progress.recalls.tempo_progress(chunks, day));
}

}  // namespace cahier
