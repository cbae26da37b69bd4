// Repeats and their endings of a piece file.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "piece/read_bars.h"

namespace cahier {

// Reads `repeats` and `endings`, reports what is wrong and leaves it out. Repeats may nest but not
// cross. With them a piece has at most 100,000 bars as played.
std::vector<Repeat> read_repeats(YamlFields& fields, const Extent& extent);

}  // namespace cahier
