#include "workbook/sheets/starts/weak_starts.h"

#include <algorithm>
#include <cstddef>

namespace cahier {
namespace {

// Outcomes of the rarest start.
std::size_t least_share(const DiceTable& table) {
  std::size_t least = table.rows.front().outcomes.size();
  for (const DiceTable::Row& row : table.rows) least = std::min(least, row.outcomes.size());
  return least;
}

}  // namespace

std::set<int> weak_starts(const std::vector<const DiceTable*>& tables) {
  std::set<int> weak;
  for (const DiceTable* table : tables)
    for (const DiceTable::Row& row : table->rows)
      if (row.outcomes.size() > least_share(*table)) weak.insert(row.cue);
  return weak;
}

std::string_view weak_words(const std::vector<const DiceTable*>& tables) {
  bool twice = false;
  bool thrice = false;
  bool other = false;
  for (const DiceTable* table : tables)
    for (const DiceTable::Row& row : table->rows) {
      const std::size_t least = least_share(*table);
      if (row.outcomes.size() == least) continue;
      if (row.outcomes.size() == 2 * least)
        twice = true;
      else if (row.outcomes.size() == 3 * least)
        thrice = true;
      else
        other = true;
    }
  if (other) return "cue_starts.weak_more";
  if (twice) return thrice ? "cue_starts.weak_two_or_three" : "cue_starts.weak_twice";
  return thrice ? "cue_starts.weak_thrice" : "";
}

}  // namespace cahier
