#include "cut_work.h"

#include <algorithm>
#include <map>

namespace exact {
namespace {

// Ways to cut so many bars, each way a list of sizes. Bars too few for chunks within the bounds
// stay as they are, or are cut as one likes.
std::vector<std::vector<int>> ways_to_cut(int bars, int least, int most) {
  const int fewest = (bars + most - 1) / most;
  const int smallest = fewest * least <= bars ? least : 1;
  std::vector<std::vector<int>> ways;
  if (bars == 0) return {{}};
  for (int size = smallest; size <= std::min(most, bars); ++size)
    for (std::vector<int> rest : ways_to_cut(bars - size, least, most)) {
      if (std::any_of(rest.begin(), rest.end(), [&](int each) { return each < smallest; }))
        continue;
      rest.insert(rest.begin(), size);
      ways.push_back(rest);
    }
  return ways;
}

}  // namespace

int CutWork::level(int first, int count) const {
  int hardest = 1;
  for (int at = first; at < first + count; ++at)
    hardest = std::max(hardest, levels[static_cast<std::size_t>(passages[at].chunk)]);
  return hardest;
}

Bars CutWork::bars(int first, int count) const {
  return {passages[first].bars.first, passages[first + count - 1].bars.last};
}

std::vector<std::vector<Bars>> ways_to_cut(const SmallWork& work, int least, int most) {
  std::vector<std::vector<Bars>> all = {{}};
  for (const Section& section : work.sections)
    for (const Bars& phrase : section.phrases) {
      std::vector<std::vector<Bars>> longer;
      for (const std::vector<Bars>& before : all)
        for (const std::vector<int>& sizes : ways_to_cut(phrase.size(), least, most)) {
          longer.push_back(before);
          int bar = phrase.first;
          for (const int size : sizes) {
            longer.back().push_back({bar, bar + size - 1});
            bar += size;
          }
        }
      all = longer;
    }
  if (work.pickup)
    for (std::vector<Bars>& chunks : all) chunks.front().first = 0;
  return all;
}

CutWork cut(const SmallWork& work, const std::vector<Bars>& chunks) {
  CutWork cut;
  cut.chunks = chunks;
  for (const Bars& chunk : chunks) {
    int level = 1;
    for (int bar = chunk.first; bar <= chunk.last; ++bar)
      level = std::max(level, work.level_at(bar));
    cut.levels.push_back(level);
  }
  std::map<int, int> numbers;  // of boundaries, by the bar before
  for (int bar = work.first_bar(); bar <= work.bars; ++bar) {
    const int learned = work.learned_as(bar);
    const auto chunk = std::find_if(chunks.begin(), chunks.end(),
                                    [&](const Bars& each) { return each.holds(learned); });
    if (learned == chunk->first)
      cut.passages.push_back({{bar, bar}, static_cast<int>(chunk - chunks.begin()), -1});
    cut.passages.back().bars.last = bar;
  }
  for (std::size_t at = 0; at + 1 < cut.passages.size(); ++at) {
    const int before = cut.passages[at].bars.last;
    const bool inside = work.learned_as(before) + 1 == work.learned_as(before + 1);
    const int boundary = inside ? work.learned_as(before) : before;
    cut.passages[at].join =
        numbers.emplace(boundary, static_cast<int>(numbers.size())).first->second;
  }
  cut.joins = static_cast<int>(numbers.size());
  return cut;
}

}  // namespace exact
