// From measure elements to bars.
#pragma once

#include <string>

#include "score/score.h"

namespace cahier {

// The index of the bar that the element, counted from 1, is in or is a piece of.
int bar_of(const Score& score, int element);

// The number by which that bar is called outside.
int bar_number_of(const Score& score, int element);

// The index of the first bar that begins with the element or after it: a section or a repeat that
// begins within a bar, with an upbeat, begins with the bar after it. May be one past the last bar.
int bar_from(const Score& score, int element);

// "9-16", or "9": what the bars with these indices are called.
std::string bars_text(const Score& score, int first, int last);

}  // namespace cahier
