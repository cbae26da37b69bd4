// Where two bars part, in words.
#pragma once

#include <string>
#include <vector>

#include "score/passages/bar_likeness.h"

namespace cahier {

// What the later bar has and the earlier one has not, hand by hand: "right hand: F♯ instead of F",
// "left hand: C added". `hands` are the names of the hands.
std::string difference_words(const BarDifference& from_earlier_to_later,
                             const std::vector<std::string>& hands);

// "the same, a whole step higher". REQUIRES: semitones is not 0.
std::string transposition_words(int semitones);

}  // namespace cahier
