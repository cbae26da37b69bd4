#include "plan/due/recall_reach.h"

#include <algorithm>

namespace cahier {
namespace {

constexpr double kRipe = 0.5;  // best gaps since the last recall
constexpr int kBridge = 2;     // chunks that a recall plays on the way to another that it wants

// Whether a recall that has come to `beside` should go on to `chunk`.
bool is_wanted(const Desk& desk, int beside, int chunk, int day, Reach reach, const Due& due) {
  if (due(chunk) || reach == Reach::all) return true;
  if (reach == Reach::due) return false;
  if (desk.memory.waits_for_first(chunk) ||
      desk.joins.waits(std::min(beside, chunk), std::max(beside, chunk)))
    return true;
  return reach == Reach::ripe && desk.memory.ripeness(chunk, day) >= kRipe;
}

}  // namespace

std::pair<int, int> recall_reach(const Desk& desk, int chunk, int day, double room, Reach reach,
                                 const Due& due) {
  int first = chunk;
  int last = chunk;
  for (int ahead = 1; ahead <= kBridge + 1 && follows(desk, last + ahead, day); ++ahead) {
    if (recall_minutes(desk, first, last + ahead) > room) break;
    if (!is_wanted(desk, last + ahead - 1, last + ahead, day, reach, due)) continue;
    last += ahead;
    ahead = 0;
  }
  for (int back = 1; back <= kBridge + 1 && follows(desk, first - back + 1, day); ++back) {
    const int before = first - back;
    if (!desk.memory.learned_before(before, day) || recall_minutes(desk, before, last) > room)
      break;
    if (!is_wanted(desk, before + 1, before, day, reach, due)) continue;
    first = before;
    back = 0;
  }
  return {first, last};
}

double recall_minutes(const Desk& desk, int first, int last) {
  const auto& chunks = desk.anatomy.planned.chunks;
  const BarRange bars{chunks[first].bars.first, chunks[last].bars.last};
  return desk.anatomy.time.recall(bars, desk.anatomy.level_in(bars));
}

bool follows(const Desk& desk, int chunk, int day) {
  const auto& chunks = desk.anatomy.planned.chunks;
  return chunk > 0 && chunk < static_cast<int>(chunks.size()) &&
         desk.memory.learned_before(chunk, day) &&
         chunks[chunk - 1].bars.last + 1 == chunks[chunk].bars.first;
}

}  // namespace cahier
