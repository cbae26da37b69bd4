// Tiny pieces and calendars, counted through in order: nothing here is left to chance.
#pragma once

#include <string>

#include "piece/piece.h"
#include "plan/terms.h"

namespace cahier::brute {

struct TinyWork {
  std::string name;  // says everything that differs
  Piece piece;
  Terms terms;  // minutes to be set
};

// Pieces whose phrases are their chunks: 1 to 6 of them.
long phrased_count();
TinyWork phrased(long number, const Method& method);

// Pieces of 2 to 10 bars without phrases, to be cut in any way.
long unphrased_count();
TinyWork unphrased(long number, const Method& method);

}  // namespace cahier::brute
