#include "plan/table_in_force.h"

#include <vector>

#include "practice/dice_tables.h"

namespace cahier {
namespace {

std::vector<int> bars_of(const std::vector<CueStart>& cues) {
  std::vector<int> bars;
  for (const CueStart& cue : cues) bars.push_back(cue.bar);
  return bars;
}

bool tells(const ThrownStarts& thrown, int piece) {
  return piece < static_cast<int>(thrown.bars.size()) && !thrown.bars[piece].empty();
}

bool same_table(const PlannedPiece& planned, const ThrownStarts& thrown, int piece) {
  if (!tells(thrown, piece) || thrown.bars[piece] != bars_of(planned.cues)) return false;
  std::vector<ThrownCue> cues;
  for (const CueStart& cue : planned.cues)
    cues.push_back({cue.number, thrown.shares[piece][cues.size()], cue.bar});
  return weighted_dice_tables(cues, thrown.dice) == planned.dice;
}

bool same_table(const ThrownStarts& one, const ThrownStarts& other, int piece) {
  return tells(one, piece) && tells(other, piece) && one.dice == other.dice &&
         one.bars[piece] == other.bars[piece] && one.shares[piece] == other.shares[piece];
}

}  // namespace

TableInForce table_in_force(const Plan& plan, int piece) {
  std::vector<const ThrownStarts*> before;
  for (const ThrownStarts& thrown : plan.record.thrown)
    if (thrown.edition < plan.record.edition) before.push_back(&thrown);
  if (before.empty()) return {};
  // A workbook whose table was that of the one before it printed none.
  std::size_t printed = before.size() - 1;
  while (printed > 0 && same_table(*before[printed], *before[printed - 1], piece)) --printed;
  const int number = before[printed]->edition;
  if (same_table(plan.pieces[piece], *before.back(), piece)) return {number, 0};
  return {0, number};
}

}  // namespace cahier
