// MusicXML becomes a score.
#pragma once

#include <string>

#include "score/score.h"

namespace cahier {

// `bytes` is a whole file: MusicXML 4.0 or older, partwise or timewise, compressed or not, told by
// its content; `file` is what messages call it. `part` is the id or the name of the part to take;
// where it is empty, choose_part decides. Throws InputError that names the file, and the line and
// the bar where there is one. No file but this is read.
Score read_score(const std::string& file, std::string bytes, const std::string& part);

}  // namespace cahier
