#include "score/passages/near_bars.h"

#include <algorithm>
#include <map>
#include <unordered_map>

#include "score/passages/bar_likeness.h"

namespace cahier {
namespace {

constexpr std::size_t kMostTried = 32;  // earlier bars of one note
constexpr std::size_t kMostNear = 4;    // of one bar

}  // namespace

std::vector<std::pair<int, int>> near_bars(const std::vector<BarNotes>& bars, double least) {
  std::unordered_map<int, std::vector<int>> bars_of_note;
  std::vector<std::pair<int, int>> pairs;
  for (int bar = 0; bar < static_cast<int>(bars.size()); ++bar) {
    const BarNotes& here = bars[static_cast<std::size_t>(bar)];
    std::map<int, std::size_t> shared;
    for (const int note : here.note_numbers) {
      std::vector<int>& others = bars_of_note[note];
      const std::size_t tried = std::min(others.size(), kMostTried);
      for (auto other = others.end() - static_cast<std::ptrdiff_t>(tried); other != others.end();
           ++other)
        ++shared[*other];
      others.push_back(bar);
    }
    std::vector<std::pair<double, int>> near;
    for (const auto& [other, count] : shared) {
      const BarNotes& earlier = bars[static_cast<std::size_t>(other)];
      if (earlier.all == here.all) continue;
      // What they share at most bounds how alike they can be.
      const auto most = static_cast<double>(std::max(here.notes.size(), earlier.notes.size()));
      if (static_cast<double>(std::min(here.notes.size(), earlier.notes.size())) < least * most)
        continue;
      const double alike = likeness(earlier, here);
      if (alike >= least) near.emplace_back(-alike, other);
    }
    std::ranges::sort(near);
    for (std::size_t at = 0; at < std::min(near.size(), kMostNear); ++at)
      pairs.emplace_back(near[at].second, bar);
  }
  return pairs;
}

}  // namespace cahier
