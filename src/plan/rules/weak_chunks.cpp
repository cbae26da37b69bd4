#include "plan/rules/weak_chunks.h"

#include "practice/history.h"

namespace cahier {
namespace {

// Slips raise a level as long as their chance, counted with the first guess of the piece's own
// level, is that of the next level or more. What is of the hardest level already is weak where its
// slips are as frequent as that level lets expect.
Weakness weakness_of(const Method& method, int own_level, const SlipCount& slips) {
  Weakness weak;
  weak.slips = slips;
  weak.level = own_level;
  if (slips.slips == 0) return weak;
  const auto& chances = method.slip_chance;  // of levels from 1
  const double first_guess = method.slip_weight * chances[own_level - 1];
  const double chance = (first_guess + slips.slips) / (method.slip_weight + slips.trials);
  const int hardest = static_cast<int>(chances.size());
  while (weak.level < hardest && chance >= chances[weak.level]) ++weak.level;
  weak.raised = weak.level > own_level || chance >= chances[hardest - 1];
  return weak;
}

}  // namespace

std::vector<Weakness> weak_chunks(const Plan& plan, int piece) {
  const PlannedPiece& planned = plan.pieces[piece];
  const History history(plan.record, piece, planned.piece);
  std::vector<Weakness> weak;
  for (const Chunk& chunk : planned.chunks) {
    weak.push_back(weakness_of(plan.method, planned.piece.hardest_level(chunk.bars),
                               history.slips(chunk.bars)));
    weak.back().last_slip = history.last_slip(chunk.bars);
  }
  return weak;
}

}  // namespace cahier
