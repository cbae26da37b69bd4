// Tempi as a score gives them.
#pragma once

#include <optional>
#include <vector>

#include "score/notation/score_parts.h"
#include "score/notation/score_warnings.h"

namespace cahier {

struct ScoreTempo {
  double per_minute = 0;  // quarter notes
  bool operator==(const ScoreTempo&) const = default;
};

// The tempo in force at the beginning of each measure element, by the sound elements of all parts,
// and where a direction has none, by its metronome mark; nothing before the first. A tempo inside a
// measure holds from the next one on. Tempi that nobody plays are passed over with a warning.
std::vector<std::optional<ScoreTempo>> read_tempi(const std::vector<WrittenPart>& parts,
                                                  ScoreWarnings& warnings);

}  // namespace cahier
