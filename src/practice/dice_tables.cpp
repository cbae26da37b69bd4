#include "practice/dice_tables.h"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <utility>

#include "practice/numbers.h"

namespace cahier {
namespace {

struct Dice {
  std::size_t faces;
  std::size_t count;

  std::size_t outcomes() const {
    std::size_t all = 1;
    for (std::size_t die = 0; die < count; ++die) all *= faces;
    return all;
  }
  // From 0 to outcomes() - 1, the first throw counting most.
  std::vector<int> outcome(std::size_t index) const {
    std::vector<int> faces_up(count);
    for (std::size_t die = count; die-- > 0; index /= faces)
      faces_up[die] = static_cast<int>(index % faces) + 1;
    return faces_up;
  }
};

double throws_until_one_counts(std::size_t outcomes, std::size_t cues) {
  return static_cast<double>(outcomes) / static_cast<double>(outcomes / cues * cues);
}

// REQUIRES: 1 <= cues <= 2 ^ kMostCoins.
Dice coins_for(std::size_t cues) {
  Dice coins{2, 1};
  while (coins.count < numbers::kMostCoins &&
         (coins.outcomes() < cues ||
          throws_until_one_counts(coins.outcomes(), cues) > numbers::kCoinPatience))
    ++coins.count;
  return coins;
}

Dice dice_for(Throw thrown, std::size_t cues) {
  switch (thrown) {
    case Throw::two_dice:
      return {6, 2};
    case Throw::one_die:
      return {6, 1};
    case Throw::d20:
      return {20, 1};
    case Throw::coins:
      return coins_for(cues);
  }
  return {6, 2};
}

std::size_t most_cues(Throw thrown) {
  if (thrown == Throw::coins) return Dice{2, numbers::kMostCoins}.outcomes();
  return dice_for(thrown, 1).outcomes();
}

std::size_t weight_of(const std::vector<ThrownCue>& cues, std::size_t begin, std::size_t end) {
  std::size_t weight = 0;
  for (std::size_t cue = begin; cue < end; ++cue)
    weight += static_cast<std::size_t>(cues[cue].weight);
  return weight;
}

DiceTable table_for(const std::vector<ThrownCue>& cues, std::size_t begin, std::size_t end,
                    Throw thrown) {
  const std::size_t weights = weight_of(cues, begin, end);
  const Dice dice = dice_for(thrown, weights);
  DiceTable table{fmt::format("{}d{}", dice.count, dice.faces),
                  static_cast<int>(dice.faces),
                  static_cast<int>(dice.count),
                  {},
                  {}};
  const std::size_t share = dice.outcomes() / weights;
  std::size_t next = 0;
  const auto take = [&](std::size_t how_many) {
    std::vector<std::vector<int>> outcomes;
    for (const std::size_t stop = next + how_many; next < stop; ++next)
      outcomes.push_back(dice.outcome(next));
    return outcomes;
  };
  for (std::size_t cue = begin; cue < end; ++cue)
    table.rows.push_back(
        {cues[cue].number, take(share * static_cast<std::size_t>(cues[cue].weight))});
  table.again = take(dice.outcomes() - next);
  return table;
}

// Where each of `count` tables of nearly equal weight begins, and where the last one ends.
std::vector<std::size_t> beginnings(const std::vector<ThrownCue>& cues, std::size_t count) {
  const std::size_t all = weight_of(cues, 0, cues.size());
  std::vector<std::size_t> begins = {0};
  std::size_t end = 0;
  std::size_t weight = 0;  // of the cues before `end`
  for (std::size_t table = 1; table < count; ++table) {
    while (end < cues.size() && (weight + weight_of(cues, end, end + 1)) * count <= all * table)
      weight += static_cast<std::size_t>(cues[end++].weight);
    if (end > begins.back() && end < cues.size()) begins.push_back(end);
  }
  begins.push_back(cues.size());
  return begins;
}

}  // namespace

std::vector<DiceTable> weighted_dice_tables(std::vector<ThrownCue> cues, Throw thrown) {
  if (cues.empty()) return {};
  std::ranges::stable_sort(cues, {}, &ThrownCue::bar);
  const std::size_t most = most_cues(thrown);
  std::size_t count = (weight_of(cues, 0, cues.size()) + most - 1) / most;
  std::vector<std::size_t> begins = beginnings(cues, count);
  const auto too_much = [&] {
    for (std::size_t table = 0; table + 1 < begins.size(); ++table)
      if (weight_of(cues, begins[table], begins[table + 1]) > most) return true;
    return false;
  };
  while (too_much()) begins = beginnings(cues, ++count);
  std::vector<DiceTable> tables;
  for (std::size_t table = 0; table + 1 < begins.size(); ++table) {
    const auto at = [&](std::size_t begin) {
      return cues.begin() + static_cast<std::ptrdiff_t>(begin);
    };
    std::ranges::sort(at(begins[table]), at(begins[table + 1]), {}, &ThrownCue::number);
    tables.push_back(table_for(cues, begins[table], begins[table + 1], thrown));
  }
  return tables;
}

std::vector<DiceTable> dice_tables(const std::vector<int>& cues, Throw thrown) {
  std::vector<ThrownCue> alike;
  for (const int number : cues) alike.push_back({number});
  return weighted_dice_tables(std::move(alike), thrown);
}

double expected_throws(const DiceTable& table) {
  std::size_t that_count = 0;
  for (const auto& row : table.rows) that_count += row.outcomes.size();
  return static_cast<double>(that_count + table.again.size()) / static_cast<double>(that_count);
}

}  // namespace cahier
