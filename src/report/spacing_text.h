// How near the recalls come to the best gaps, in words.
#pragma once

#include <string>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// The single figure in a sentence, and how many gaps days off force to be longer; each begins a
// line, indented by two. Empty when there is no gap between recalls.
std::string spacing_figure(const Plan& plan, const Words& words);

// After an empty line, for each chunk that is learned its days of recall and under them the best
// ones, with what they mean above. Lines are at most 80 characters; ends in a newline. Empty when
// no chunk is learned.
std::string spacing_by_chunk(const Plan& plan, const Words& words);

}  // namespace cahier
