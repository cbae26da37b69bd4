// The notes, meters and keys of one part.
#pragma once

#include <optional>
#include <vector>

#include "score/notation/measure_attributes.h"
#include "score/notation/score_note.h"
#include "score/notation/score_parts.h"
#include "score/notation/score_warnings.h"

namespace cahier {

struct PartMeasure {
  Quarters length;  // as far as its notes, rests and skips reach
  std::vector<ScoreNote> notes;
  bool has_meter = false;           // begins with a meter, which may be none
  std::optional<ScoreMeter> meter;  // that begins here
  std::optional<ScoreKey> key;      // that begins here
};

// One for each measure of the part. Throws InputError for what cannot be, with its line and bar.
std::vector<PartMeasure> read_part(const WrittenPart& part, ScoreWarnings& warnings);

}  // namespace cahier
