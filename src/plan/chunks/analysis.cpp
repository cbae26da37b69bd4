#include "plan/chunks/analysis.h"

#include <algorithm>
#include <set>

namespace cahier {

int Analysis::passage_at(int bar) const {
  const auto after = std::upper_bound(
      passages.begin(), passages.end(), bar,
      [](int wanted, const Passage& passage) { return wanted < passage.bars.first; });
  return static_cast<int>(after - passages.begin()) - 1;
}

std::vector<int> Analysis::chunks_in(BarRange bars) const {
  std::vector<int> result;
  for (int i = passage_at(bars.first);
       i < static_cast<int>(passages.size()) && passages[i].bars.first <= bars.last; ++i) {
    const Passage& passage = passages[i];
    const bool whole = passage.learned == planned.chunks[passage.chunk].bars;
    if (whole && bars.contains(passage.bars)) result.push_back(passage.chunk);
  }
  std::sort(result.begin(), result.end());
  result.erase(std::unique(result.begin(), result.end()), result.end());
  return result;
}

std::vector<int> Analysis::chunks_touching(BarRange bars) const {
  std::set<int> touching;
  for (int i = passage_at(bars.first);
       i < static_cast<int>(passages.size()) && passages[i].bars.first <= bars.last; ++i)
    touching.insert(passages[i].chunk);
  return {touching.begin(), touching.end()};
}

StartFromCue Analysis::start_over(BarRange bars) const {
  return {bars.first, bars, chunks_in(bars), chunks_touching(bars)};
}

StartFromCue Analysis::start_at(int bar) const {
  int passage = passage_at(bar);
  const bool inside = passages[passage].bars.first != bar;
  if (inside && passage + 1 < static_cast<int>(passages.size())) ++passage;
  return start_over({bar, passages[passage].bars.last});
}

int Analysis::level_in(BarRange bars) const {
  int level = 1;
  for (int i = passage_at(bars.first);
       i < static_cast<int>(passages.size()) && passages[i].bars.first <= bars.last; ++i)
    level = std::max(level, planned.chunks[passages[i].chunk].level);
  return level;
}

}  // namespace cahier
