#include "workbook/sheets/child/child_throw.h"

namespace cahier {
namespace {

constexpr std::size_t kCoinSides = 2;
constexpr std::size_t kDieSides = 6;

}  // namespace

std::vector<DiceTable> child_tables(const PlannedPiece& piece) {
  if (piece.cues.size() < kCoinSides) return {};
  if (piece.piece.practice.dice || piece.cues.size() > kDieSides) return piece.dice;
  // Each start once: a child's dice have no favourites.
  std::vector<int> numbers;
  for (const CueStart& cue : piece.cues) numbers.push_back(cue.number);
  return dice_tables(numbers, numbers.size() == kCoinSides ? Throw::coins : Throw::one_die);
}

std::string_view child_throw_key(const PlannedPiece& piece) {
  const std::vector<DiceTable> tables = child_tables(piece);
  if (tables.empty()) return "child.from_the_start";
  if (tables.front().faces == 2)
    return tables.front().count == 1 ? "child.toss_coin" : "child.toss_coins";
  return tables.front().count == 1 ? "child.toss_die" : "child.toss_dice";
}

}  // namespace cahier
