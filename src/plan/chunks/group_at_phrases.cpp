#include "plan/chunks/group_at_phrases.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

// What is not divided: a phrase, or a single range.
struct Unit {
  int first = 0;  // index
  int bars = 0;
};

int bars_of(BarRange range) { return range.size() - (range.first == 0 ? 1 : 0); }

// Where phrases begin, or every range where none is known; a phrase that is too long falls apart.
std::vector<Unit> units_of(const std::vector<BarRange>& ranges, const PhraseMap& phrases,
                           int most_bars) {
  std::vector<Unit> units;
  const auto count = static_cast<int>(ranges.size());
  for (int first = 0; first < count;) {
    int end = first + 1;
    int bars = bars_of(ranges[first]);
    while (end < count && phrases.is_known(ranges[end].first) && !phrases.begins(ranges[end].first))
      bars += bars_of(ranges[end++]);
    if (bars > numbers::kTooLongPhrase * most_bars)
      for (int one = first; one < end; ++one) units.push_back({one, bars_of(ranges[one])});
    else
      units.push_back({first, bars});
    first = end;
  }
  return units;
}

// One group after the other, each as long as `most` allows.
std::vector<int> fill_groups(const std::vector<Unit>& units, int most) {
  std::vector<int> groups;
  int bars = 0;
  for (const Unit& unit : units) {
    if (groups.empty() || bars + unit.bars > most) {
      groups.push_back(unit.first);
      bars = 0;
    }
    bars += unit.bars;
  }
  return groups;
}

}  // namespace

std::vector<int> group_at_phrases(const std::vector<BarRange>& ranges, const PhraseMap& phrases,
                                  int most_bars) {
  const std::vector<Unit> units = units_of(ranges, phrases, most_bars);
  const std::vector<int> fewest = fill_groups(units, most_bars);
  for (int most = 1; most < most_bars; ++most)
    if (std::vector<int> even = fill_groups(units, most); even.size() == fewest.size()) return even;
  return fewest;
}

}  // namespace cahier
