// What chunks are called in print.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"

namespace cahier {

// A chunk's id, unless it could be taken for a section or for part of another one: "A2" where a
// section is called A2, "B1" for bars of the coda, "T1" where there are a theme and a trio. Then
// all chunks of its section are called by their bars. Ids stay what they are in JSON and in logs.
class ChunkLabels {
 public:
  explicit ChunkLabels(const PlannedPiece& piece);

  bool by_bars(const Chunk& chunk) const { return by_bars_[chunk.section]; }
  // "A2", or "5–8".
  std::string of(const Chunk& chunk) const;

 private:
  std::vector<bool> by_bars_;  // by section
};

}  // namespace cahier
