#include "plan/due/recall_reach.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

// Whether a recall that has come to `beside` should go on to `chunk`.
bool is_wanted(const PieceProgress& progress, int beside, int chunk, int day, Reach reach,
               const Due& due) {
  if (due(chunk) || reach == Reach::all) return true;
  if (reach == Reach::due) return false;
  if (progress.recalls.waits_for_first(chunk) ||
      progress.joins.waits(std::min(beside, chunk), std::max(beside, chunk)))
    return true;
  return reach == Reach::ripe && progress.recalls.ripeness(chunk, day) >= numbers::kReachRipe;
}

}  // namespace

std::pair<int, int> recall_reach(const PieceProgress& progress, int chunk, int day, double room,
                                 Reach reach, const Due& due) {
  int first = chunk;
  int last = chunk;
  for (int ahead = 1; ahead <= numbers::kReachBridge + 1 && follows(progress, last + ahead, day);
       ++ahead) {
    if (recall_minutes(progress, first, last + ahead) > room) break;
    if (!is_wanted(progress, last + ahead - 1, last + ahead, day, reach, due)) continue;
    last += ahead;
    ahead = 0;
  }
  for (int back = 1; back <= numbers::kReachBridge + 1 && follows(progress, first - back + 1, day);
       ++back) {
    const int before = first - back;
    if (!progress.recalls.learned_before(before, day) ||
        recall_minutes(progress, before, last) > room)
      break;
    if (!is_wanted(progress, before + 1, before, day, reach, due)) continue;
    first = before;
    back = 0;
  }
  return {first, last};
}

double recall_minutes(const PieceProgress& progress, int first, int last) {
  const auto& chunks = progress.analysis.planned.chunks;
  const BarRange bars{chunks[first].bars.first, chunks[last].bars.last};
  return progress.analysis.time.recall(bars, progress.analysis.level_in(bars));
}

bool follows(const PieceProgress& progress, int chunk, int day) {
  const auto& chunks = progress.analysis.planned.chunks;
  return chunk > 0 && chunk < static_cast<int>(chunks.size()) &&
         progress.recalls.learned_before(chunk, day) &&
         chunks[chunk - 1].bars.last + 1 == chunks[chunk].bars.first;
}

}  // namespace cahier
