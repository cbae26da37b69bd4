// All ways of cutting a short piece into chunks.
#pragma once

#include <vector>

#include "plan/chunks/divide.h"

namespace cahier {

// Every way, phrase by phrase, with sizes within the method's bounds; a phrase too short for them
// stays whole. Empty where there are more than `numbers::kTinyDivisions` ways. `learned` as for
// divide_into_chunks.
std::vector<std::vector<Chunk>> every_division(const Piece& piece,
                                               const std::vector<BarRange>& learned,
                                               const Method& method);

}  // namespace cahier
