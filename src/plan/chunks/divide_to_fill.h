// Cuts a piece so that its chunks fill the days on which they are learned.
#pragma once

#include <vector>

#include "plan/chunks/divide.h"

namespace cahier {

// Chunks within the method's bounds that, learned in the order of `section_order` and within a
// section forward, need the fewest of days that have so many minutes for them; the last of
// `minutes` stands for all days after it.
// `learned` as for divide_into_chunks; it takes no time.
std::vector<Chunk> divide_to_fill(const Piece& piece, const std::vector<int>& section_order,
                                  const std::vector<BarRange>& learned, const Method& method,
                                  const std::vector<double>& minutes);

}  // namespace cahier
