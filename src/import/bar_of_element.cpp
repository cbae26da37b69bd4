#include "import/bar_of_element.h"

#include <fmt/format.h>

#include <algorithm>

namespace cahier {

int bar_of(const Score& score, int element) {
  const auto after = std::ranges::upper_bound(score.bars, element, {}, &ScoreBar::first);
  return std::max(0, static_cast<int>(after - score.bars.begin()) - 1);
}

int bar_number_of(const Score& score, int element) {
  return score.bars[static_cast<std::size_t>(bar_of(score, element))].number;
}

int bar_from(const Score& score, int element) {
  const auto found = std::ranges::lower_bound(score.bars, element, {}, &ScoreBar::first);
  return static_cast<int>(found - score.bars.begin());
}

std::string bars_text(const Score& score, int first, int last) {
  const auto number = [&](int bar) { return score.bars[static_cast<std::size_t>(bar)].number; };
  return first == last ? fmt::format("{}", number(first))
                       : fmt::format("{}-{}", number(first), number(last));
}

}  // namespace cahier
