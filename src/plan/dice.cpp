#include "plan/dice.h"

#include <cstddef>

namespace cahier {
namespace {

constexpr std::size_t kFaces = 6;
constexpr std::size_t kOutcomes = kFaces * kFaces;

DiceTable table_for(const std::vector<int>& cues, std::size_t begin, std::size_t end) {
  DiceTable table;
  const std::size_t share = kOutcomes / (end - begin);
  std::size_t next = 0;
  const auto take = [&next](std::size_t how_many) {
    std::vector<std::vector<int>> outcomes;
    for (const std::size_t stop = next + how_many; next < stop; ++next)
      outcomes.push_back(
          {static_cast<int>(next / kFaces) + 1, static_cast<int>(next % kFaces) + 1});
    return outcomes;
  };
  for (std::size_t cue = begin; cue < end; ++cue) table.rows.push_back({cues[cue], take(share)});
  table.again = take(kOutcomes - next);
  return table;
}

}  // namespace

std::vector<DiceTable> dice_tables(const std::vector<int>& cues) {
  std::vector<DiceTable> tables;
  const std::size_t count = (cues.size() + kOutcomes - 1) / kOutcomes;
  for (std::size_t table = 0; table < count; ++table)
    tables.push_back(
        table_for(cues, cues.size() * table / count, cues.size() * (table + 1) / count));
  return tables;
}

double expected_throws(const DiceTable& table) {
  std::size_t that_count = 0;
  for (const auto& row : table.rows) that_count += row.outcomes.size();
  return static_cast<double>(that_count + table.again.size()) / static_cast<double>(that_count);
}

}  // namespace cahier
