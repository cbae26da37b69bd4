// Measure elements become bars.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

// A measure element shorter than its meter and one after it that is implicit (or has no number of
// its own: X1, or the same number again) are one bar, as long as they do not make more than the
// meter holds. The first bar is a pickup when it is shorter than its meter, marked or not.
std::vector<ScoreBar> join_bars(const std::vector<ScoreMeasure>& measures);

// Gives each bar its number: the printed one where these run on from 1 without a gap and each once,
// a pickup before them being 0; else counted likewise, with a warning.
void number_bars(std::vector<ScoreBar>& bars, ScoreWarnings& warnings);

// Says where printed numbers do not tell bars apart, and which bars are longer than their meter.
void warn_of_bars(const std::vector<ScoreMeasure>& measures, const std::vector<ScoreBar>& bars,
                  ScoreWarnings& warnings);

}  // namespace cahier
