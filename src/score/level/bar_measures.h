// What can be measured of a hand's difficulty in a bar.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

struct BarMeasures {
  double onsets = 0;    // a second, where they are most: moments struck, and grace notes
  int chord = 0;        // notes struck at once, at most
  int spread = 0;       // steps beyond an octave, of the widest chord; at most kMostSpread
  double leaps = 0;     // steps beyond an octave a second, from what was struck just before
  int accidentals = 0;  // different notes that the key does not have
  double apart = 0;     // onsets a second at which no other hand strikes; no more than those have,
                        // so that a run over a held chord is hardly any
  bool met = false;     // the hand has played the same bar before
};

// Of each bar, by index, and in it of each hand. Ties are not struck; tempo is that of the score,
// or kUsualTempo; without a key, accidentals are those against C major. The intervals count staff
// steps, so that an accidental changes nothing but their number.
std::vector<std::vector<BarMeasures>> measure_bars(const Score& score);

}  // namespace cahier
