// How hard a bar is for a hand, from 1, easy, to 5, very hard.
#pragma once

#include <vector>

#include "score/level/bar_measures.h"

namespace cahier {

// The sum of all measures, each times its weight (level_weights.h):
//
//   points = kOnset × onsets + kChordNote × (chord − 1) + kSpread × spread + kLeap × leaps
//          + kAccidental × accidentals + kApart × apart − kMet, where the bar has been met
//
// and level = 1 + points, rounded down, from 1 to 5. It grows, or stays, with each measure. A note
// that is added to a bar never makes it easier for its hand, unless the bar becomes one that has
// been met; it may for the other hand, where the two come together. Not measured are fingering,
// voices within a hand, rhythm and expression: the player's own judgement comes first.
int level_of(const BarMeasures& measures);

// Of each bar, by index, and in it of each hand. A bar of rests is 1.
std::vector<std::vector<int>> bar_levels(const Score& score);

}  // namespace cahier
