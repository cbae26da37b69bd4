// Which part of a score is the player's.
#pragma once

#include <string>
#include <vector>

#include "score/notation/score_parts.h"
#include "score/notation/score_warnings.h"

namespace cahier {

// What one hand (or the feet) plays.
struct ScoreHand {
  std::string name;         // "right hand", "left hand", "pedals", or the part's own
  std::vector<int> staves;  // from 1, the top one of all that was chosen
};

struct PartChoice {
  std::vector<std::size_t> parts;  // one, or the two of a keyboard written as two parts, top first
  std::string reason;              // "the only part with more than one staff"
  std::vector<ScoreHand> hands;    // from the top
};

// The part with two or more staves; of several the one with a keyboard's name or sound, else the
// first; where there is none, two neighbouring one-staff parts of one keyboard; else the first
// part. With `wanted`, an id or a name as printed, that part; with two ids, "P1+P2", these as two
// hands. Throws InputError where no part is called so; the message lists all.
PartChoice choose_part(const std::string& file, const std::vector<WrittenPart>& parts,
                       const std::string& wanted, ScoreWarnings& warnings);

}  // namespace cahier
