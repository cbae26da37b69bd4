// Hard bars, look-alikes, marks and cues of a piece file.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "piece/read_bars.h"

namespace cahier {

// Each reads one key, reports what is wrong and leaves it out.
std::vector<HardBars> read_hard(YamlFields& fields, const Extent& extent);
std::vector<LookAlikes> read_look_alikes(YamlFields& fields, const Extent& extent);
std::vector<Mark> read_marks(YamlFields& fields, const Extent& extent);
std::vector<int> read_cues(YamlFields& fields, const Extent& extent);

}  // namespace cahier
