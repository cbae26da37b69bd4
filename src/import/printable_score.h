// A score whose texts can be printed.
#pragma once

#include "score/score.h"

namespace cahier {

// Without the characters that no typeface prints, so that check and print take the piece; a warning
// says where some were left out. Throws FileError where the fonts are missing.
Score printable(Score score);

}  // namespace cahier
