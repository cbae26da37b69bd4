// The words under the notes.
#pragma once

#include <string>
#include <vector>

#include "score/notation/score_parts.h"

namespace cahier {

struct ScoreLyric {
  int element = 1;    // measure element
  std::string part;   // the id
  std::string verse;  // its number as written, often "1"
  std::string text;   // the syllables of that bar: "le so-leil"
};

// Of all parts, in the order of the score.
std::vector<ScoreLyric> read_lyrics(const std::vector<WrittenPart>& parts);

}  // namespace cahier
