// Which neighbouring chunks are played together, so that what is played begins with a phrase.
#pragma once

#include <vector>

#include "piece/bar_range.h"
#include "plan/phrase_map.h"

namespace cahier {

// Puts ranges that follow each other into as few groups as hold at most `most_bars` bars each, of
// about equal length; returns the index of each group's first range. A group begins where a phrase
// does, as far as phrases are known; a phrase that is longer by itself is one group, and divided
// only when it is half as long again. A pickup rides along without counting.
std::vector<int> group_at_phrases(const std::vector<BarRange>& ranges, const PhraseMap& phrases,
                                  int most_bars);

}  // namespace cahier
