// A repeat as written, with the place that messages about it point at.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "piece/read_bars.h"

namespace cahier {

struct WrittenRepeat {
  Repeat repeat;
  Place at;
};

// Reads `endings` and gives each to the innermost repeat at whose end it stands. False after an
// error. REQUIRES: `repeats` nest, the outer before the inner.
// Where not all repeats could be read, each ending is only checked by itself.
bool read_endings(YamlFields& fields, const Extent& extent, std::vector<WrittenRepeat>& repeats,
                  bool all_repeats_read);

}  // namespace cahier
