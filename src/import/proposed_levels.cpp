#include "import/proposed_levels.h"

#include <algorithm>
#include <functional>

#include "score/hand_notes.h"
#include "score/level/bar_level.h"

namespace cahier {
namespace {

class LevelProposal {
 public:
  explicit LevelProposal(const Score& score) : score_(score), levels_(bar_levels(score)) {}

  // Of the bars from first to last; adds what is hard among them.
  int take(int first, int last) {
    std::vector<int> sounding;
    for (int bar = first; bar <= last; ++bar)
      if (sounds(bar)) sounding.push_back(level(bar));
    const int usual = sounding.empty() ? kUsualLevel : reached_by_half(sounding);
    for (int bar = first; bar <= last; ++bar) {
      if (!is_hard(bar, usual)) continue;
      int end = bar;
      while (end < last &&
             (is_hard(end + 1, usual) || (end + 2 <= last && is_hard(end + 2, usual))))
        ++end;
      add_hard(bar, end, usual);
      bar = end;
    }
    return usual;
  }

  std::vector<ProposedHardBars> hard() {
    std::ranges::stable_sort(hard_, [](const ProposedHardBars& one, const ProposedHardBars& other) {
      if (one.level != other.level) return one.level > other.level;
      return one.last - one.first > other.last - other.first;
    });
    if (hard_.size() > kMostHardLines) hard_.resize(kMostHardLines);
    std::ranges::sort(hard_, {}, &ProposedHardBars::first);
    return hard_;
  }

 private:
  const std::vector<int>& hands(int bar) const { return levels_[static_cast<std::size_t>(bar)]; }
  int level(int bar) const { return std::ranges::max(hands(bar)); }

  bool sounds(int bar) const {
    for (std::size_t hand = 0; hand < score_.hands.size(); ++hand)
      if (!hand_notes(score_, bar, static_cast<int>(hand)).empty()) return true;
    return false;
  }

  bool is_hard(int bar, int usual) const {
    return level(bar) > usual && level(bar) >= kLeastHardLevel;
  }

  static int reached_by_half(std::vector<int> levels) {
    std::ranges::sort(levels, std::greater());
    return levels[(levels.size() - 1) / 2];
  }

  void add_hard(int first, int last, int usual) {
    std::vector<int> levels;
    for (int bar = first; bar <= last; ++bar)
      if (is_hard(bar, usual)) levels.push_back(level(bar));
    ProposedHardBars found{first, last, reached_by_half(levels), {}};
    for (int hand = 0; hand < static_cast<int>(score_.hands.size()); ++hand)
      for (int bar = first; bar <= last; ++bar)
        if (hands(bar)[static_cast<std::size_t>(hand)] >= found.level) {
          found.hands.push_back(hand);
          break;
        }
    hard_.push_back(std::move(found));
  }

  const Score& score_;
  const std::vector<std::vector<int>> levels_;
  std::vector<ProposedHardBars> hard_;
};

}  // namespace

ProposedLevels propose_levels(const Score& score, const std::vector<ProposedSection>& sections) {
  LevelProposal proposal(score);
  ProposedLevels levels;
  for (const ProposedSection& one : sections)
    levels.sections.push_back(one.source ? kUsualLevel : proposal.take(one.first, one.last));
  if (sections.empty()) levels.piece = proposal.take(0, static_cast<int>(score.bars.size()) - 1);
  levels.hard = proposal.hard();
  return levels;
}

}  // namespace cahier
