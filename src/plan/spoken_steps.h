// Spoken work step by step, as a teacher gives it.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"

namespace cahier {

// For each part: the others played while it is said; then it played and said, where there are no
// more than three parts; at last all together. With two hands five steps, with an organ's three
// parts seven, and never more than one for each part besides.
std::vector<Step> spoken_steps(const std::vector<std::string>& parts, const Method& method);

// Of a step of spoken work: whether the part that is said is the one that is played.
bool says_what_is_played(const Step& step);

}  // namespace cahier
