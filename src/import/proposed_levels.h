// Levels for a piece file, from what is measured of a score.
#pragma once

#include <vector>

#include "import/proposed_sections.h"
#include "score/score.h"

namespace cahier {

inline constexpr int kUsualLevel = 2;              // of a piece file that says none
inline constexpr int kLeastHardLevel = 3;          // of bars that are named
inline constexpr std::size_t kMostHardLines = 12;  // more are no longer read

struct ProposedHardBars {
  int first = 0;  // bars by index, from 0
  int last = 0;
  int level = 3;
  std::vector<int> hands;  // that are as hard as that, as indices in score.hands
};

struct ProposedLevels {
  int piece = kUsualLevel;    // of the bars in no section
  std::vector<int> sections;  // of each section that was proposed; the usual one for a return
  std::vector<ProposedHardBars> hard;  // in the order of the bars
};

// A bar is as hard as it is for the hand that has most to do (score/level); a section, or a piece
// without sections, as half of its bars are at least, rests left aside. Hard are bars above that
// and kLeastHardLevel or more, one easier bar between them included; of these places
// kMostHardLines, the hardest and then the longest. Returns are learned elsewhere and have none.
ProposedLevels propose_levels(const Score& score, const std::vector<ProposedSection>& sections);

}  // namespace cahier
