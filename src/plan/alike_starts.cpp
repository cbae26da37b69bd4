#include "plan/alike_starts.h"

#include <algorithm>
#include <map>
#include <utility>

namespace cahier {
namespace {

// Whether two bars are as far into passages that look alike, and before the forks of both.
bool look_alike(const Piece& piece, int one, int other) {
  const auto in = [](const LookAlikes& group, int bar, int ahead) {
    for (std::size_t at = 0; at < group.passages.size(); ++at)
      if (group.passages[at].contains(bar) && bar < group.forks[at] &&
          bar - group.passages[at].first == ahead)
        return true;
    return false;
  };
  return std::ranges::any_of(piece.look_alikes, [&](const LookAlikes& group) {
    return std::ranges::any_of(group.passages, [&](const BarRange& passage) {
      const int ahead = one - passage.first;
      return in(group, one, ahead) && in(group, other, ahead);
    });
  });
}

}  // namespace

std::vector<AlikeStarts> alike_starts(const PlannedPiece& piece, const CueStart& cue) {
  const std::vector<int> learned = piece.piece.learned_bars();
  const auto is_same = [&](int one, int other) {
    return learned[one] == learned[other] || look_alike(piece.piece, one, other);
  };
  const int from = std::max(cue.bar, 1);
  std::map<int, std::vector<int>> by_end;
  for (const CueStart& other : piece.cues) {
    const int start = std::max(other.bar, 1);
    if (start == from) continue;
    int alike = 0;
    while (std::max(from, start) + alike <= piece.piece.bars &&
           is_same(from + alike, start + alike))
      ++alike;
    if (alike > 0) by_end[from + alike - 1].push_back(other.bar);
  }
  std::vector<AlikeStarts> all;
  for (auto& [until, bars] : by_end) {
    std::ranges::sort(bars);
    all.push_back({std::move(bars), until});
  }
  return all;
}

}  // namespace cahier
