// Phrases that a score's slurs, rests and fermatas suggest.
#pragma once

#include <vector>

#include "score/phrase_ends.h"
#include "score/score.h"

namespace cahier {

inline constexpr int kMostPhraseBars = 8;

struct ProposedPhrase {
  int first = 0;  // bars by index, from 0
  int last = 0;
  bool operator==(const ProposedPhrase&) const = default;
};

// The phrases of the bars from first to last, one after the other without a gap; empty where they
// are not clear. Each but the last ends with one of the `ends`; they have two to
// kMostPhraseBars, a pickup not counted, four if they can. A sign that stands at more than half of
// the bar lines is a way of playing and tells nothing.
std::vector<ProposedPhrase> propose_phrases(const Score& score, const std::vector<PhraseEnd>& ends,
                                            int first, int last);

}  // namespace cahier
