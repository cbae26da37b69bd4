#include "score/passages/score_returns.h"

#include <algorithm>
#include <functional>
#include <numeric>

#include "score/passages/repeated_passages.h"

namespace cahier {
namespace {

constexpr int kLeastBars = 2;

bool lies_in(const ScoreReturn& inner, const ScoreReturn& outer) {
  return outer.first <= inner.first && inner.last <= outer.last &&
         inner.first - inner.source == outer.first - outer.source;
}

std::vector<ScoreReturn> returns_of(const std::vector<int>& row,
                                    const std::function<bool(int)>& is_silent,
                                    const std::vector<int>& hands) {
  std::vector<ScoreReturn> found;
  for (const RepeatedPassage& passage : repeated_passages(row, kLeastBars)) {
    ScoreReturn one{passage.first, passage.first + passage.length - 1, passage.source, hands};
    while (one.first <= one.last && is_silent(one.first)) ++one.first, ++one.source;
    while (one.last > one.first && is_silent(one.last)) --one.last;
    if (one.last - one.first + 1 >= kLeastBars) found.push_back(std::move(one));
  }
  return found;
}

}  // namespace

std::vector<ScoreReturn> find_returns(const std::vector<BarNotes>& bars) {
  if (bars.empty()) return {};
  const int hands = static_cast<int>(bars.front().content.size());
  std::vector<int> all_hands(static_cast<std::size_t>(hands));
  std::iota(all_hands.begin(), all_hands.end(), 0);
  std::vector<int> row;
  for (const BarNotes& bar : bars) row.push_back(bar.all);
  std::vector<ScoreReturn> found = returns_of(
      row, [&](int bar) { return bars[static_cast<std::size_t>(bar)].is_silent(); }, all_hands);
  if (hands < 2) return found;
  const std::size_t together = found.size();
  for (int hand = 0; hand < hands; ++hand) {
    const auto at = static_cast<std::size_t>(hand);
    row.clear();
    for (const BarNotes& bar : bars) row.push_back(bar.content[at]);
    for (ScoreReturn& one : returns_of(
             row, [&](int bar) { return bars[static_cast<std::size_t>(bar)].silent[at]; }, {hand}))
      if (std::none_of(found.begin(), found.begin() + static_cast<std::ptrdiff_t>(together),
                       [&](const ScoreReturn& outer) { return lies_in(one, outer); }))
        found.push_back(std::move(one));
  }
  std::ranges::stable_sort(found, {}, &ScoreReturn::first);
  return found;
}

}  // namespace cahier
