#include "import/proposed_phrases.h"

#include <algorithm>
#include <array>
#include <limits>
#include <map>

namespace cahier {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();

// Our choice, and only their order matters much: how much a phrase of so many bars costs, four
// being what most music has, and how much a sign is worth. Two bars are half of a phrase rather
// than one except where the music stops; two of four bars are better than one of eight at any sign.
constexpr std::array<double, kMostPhraseBars + 1> kLengthCost = {kNever, kNever, 1.5, 1.0, 0,
                                                                 0.5,    0.4,    0.6, 0.3};

double worth(PhraseSign sign) {
  switch (sign) {
    case PhraseSign::long_note:
      return 1;
    case PhraseSign::rest:
      return 1.5;
    case PhraseSign::new_key:
    case PhraseSign::silence:
      return 2;
    case PhraseSign::held:
      return 2.5;
  }
  return 0;
}

// Without the signs that are too common to tell anything.
std::map<int, PhraseSign> telling(const std::vector<PhraseEnd>& ends, int first, int last) {
  std::map<int, PhraseSign> found;
  for (const PhraseEnd& end : ends)
    if (first <= end.bar && end.bar < last) found.emplace(end.bar, end.sign);
  for (const PhraseSign sign :
       {PhraseSign::long_note, PhraseSign::rest, PhraseSign::silence, PhraseSign::held})
    if (2 * static_cast<int>(found.size()) > last - first)
      std::erase_if(found, [&](const auto& one) { return one.second == sign; });
  return found;
}

}  // namespace

std::vector<ProposedPhrase> propose_phrases(const Score& score, const std::vector<PhraseEnd>& ends,
                                            int first, int last) {
  const std::map<int, PhraseSign> signs = telling(ends, first, last);
  const int pickup = first == 0 && score.bars.front().pickup ? 1 : 0;
  // By the bars up to the end of a phrase: the least cost, and where that phrase begins.
  const auto count = static_cast<std::size_t>(last - first + 1);
  std::vector<double> best(count + 1, kNever);
  std::vector<int> from(count + 1, 0);
  best[0] = 0;
  for (int end = 1; end <= static_cast<int>(count); ++end) {
    const auto sign = signs.find(first + end - 1);
    const bool is_last = end == static_cast<int>(count);
    if (!is_last && sign == signs.end()) continue;
    const double gain = is_last ? 0 : worth(sign->second);
    for (int begin = std::max(0, end - kMostPhraseBars - pickup); begin < end; ++begin) {
      const int bars = end - begin - (begin == 0 ? pickup : 0);
      if (bars > kMostPhraseBars) continue;
      const double cost = best[static_cast<std::size_t>(begin)] +
                          kLengthCost[static_cast<std::size_t>(bars)] - gain;
      if (cost >= best[static_cast<std::size_t>(end)]) continue;
      best[static_cast<std::size_t>(end)] = cost;
      from[static_cast<std::size_t>(end)] = begin;
    }
  }
  std::vector<ProposedPhrase> phrases;
  if (best[count] == kNever) return phrases;
  for (auto end = static_cast<int>(count); end > 0; end = from[static_cast<std::size_t>(end)])
    phrases.push_back({first + from[static_cast<std::size_t>(end)], first + end - 1});
  std::ranges::reverse(phrases);
  if (phrases.size() == 1) phrases.clear();
  return phrases;
}

}  // namespace cahier
