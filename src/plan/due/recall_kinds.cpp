#include "plan/due/recall_kinds.h"

namespace cahier {

Task recall_turn(const Desk& desk, BarRange bars, const std::vector<int>& chunks, int turn, int day,
                 double room) {
  const int kind = turn % 3;
  if (kind != 2) {
    Task task = kind == 0 ? desk.make.slow_pass(bars) : desk.make.counted_pass(bars);
    if (task.minutes <= room) return task;
  }
  return desk.make.recall(bars, desk.memory.progress(chunks, day));
}

}  // namespace cahier
