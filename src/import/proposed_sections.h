// Sections that a score's own marks suggest.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/passages/score_returns.h"
#include "score/score.h"

namespace cahier {

struct ProposedSection {
  int first = 0;  // bars by index, from 0
  int last = 0;
  std::string name;
  std::optional<int> source;  // of a return: where the same bars begin for the first time
};

inline constexpr int kLeastSectionBars = 4;  // where only one mark of several near ones can count
inline constexpr int kLeastReturnBars = 4;   // shorter ones are not worth a section of their own

// In the order of the bars, without a gap; empty where nothing divides the score. Returns of all
// hands come first, the longest before others; then rehearsal marks; then double bars and repeat
// signs, then new keys, then new meters, each where no section gets shorter than kLeastSectionBars.
// What follows a return that is a little shorter than its source is its end. A pickup belongs to
// the section of bar 1.
std::vector<ProposedSection> propose_sections(const Score& score,
                                              const std::vector<ScoreReturn>& returns);

}  // namespace cahier
