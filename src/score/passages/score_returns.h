// Passages that come back note for note.
#pragma once

#include <vector>

#include "score/passages/bar_notes.h"

namespace cahier {

// Bars by their index, from 0.
struct ScoreReturn {
  int first = 0;
  int last = 0;
  int source = 0;          // where the same bars begin for the first time
  std::vector<int> hands;  // which play the same, as indices in score.hands
};

// Of two bars or more, each as long as it can be; first what all hands play again, then what one
// hand does where the others play something else. A return begins and ends with a bar that sounds.
std::vector<ScoreReturn> find_returns(const std::vector<BarNotes>& bars);

}  // namespace cahier
