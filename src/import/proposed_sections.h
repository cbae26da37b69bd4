// Sections that a score's own marks suggest.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "import/proposed_phrases.h"
#include "score/passages/score_returns.h"
#include "score/score.h"

namespace cahier {

struct ProposedSection {
  int first = 0;  // bars by index, from 0
  int last = 0;
  std::string name;
  std::optional<int> source;  // of a return: where the same bars begin for the first time
  std::vector<ProposedPhrase> phrases = {};  // of all its bars; empty where they are not clear
};

inline constexpr int kLeastSectionBars = 4;  // where only one mark of several near ones can count
inline constexpr int kLeastReturnBars = 4;   // shorter ones are not worth a section of their own

// In the order of the bars, without a gap; empty where nothing divides the score. Returns of all
// hands come first, the longest before others; then rehearsal marks; then double bars and repeat
// signs, then new keys, then new meters, each where no section gets shorter than kLeastSectionBars.
// What follows a return that is a little shorter than its source is its end. A pickup belongs to
// the section of bar 1. A score that nothing divides is one section where its phrases are clear and
// the planner would not divide it either. Returns have the phrases of their source, and name none.
std::vector<ProposedSection> propose_sections(const Score& score,
                                              const std::vector<ScoreReturn>& returns);

}  // namespace cahier
