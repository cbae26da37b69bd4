// What each hand does differently where two bars part.
#pragma once

#include <string>
#include <vector>

#include "piece/parting.h"
#include "score/passages/bar_likeness.h"

namespace cahier {

// What the later bar has and the earlier one has not, hand by hand. `hands` are the names of the
// hands.
std::vector<HandChange> hand_changes(const BarDifference& from_earlier_to_later,
                                     const std::vector<std::string>& hands);

}  // namespace cahier
