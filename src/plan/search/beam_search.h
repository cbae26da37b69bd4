// Plans of a short piece, day by day and many side by side.
#pragma once

#include <vector>

#include "plan/schedule/day_choice.h"
#include "plan/search/tiny_piece.h"

namespace cahier {

// A beam search (Lowerre 1976; Russell and Norvig, Artificial Intelligence): after each practice
// day the `numbers::kBeamWidth` beginnings of a plan with the least left to do are kept, of all
// that do on this day what must be done and then as much as it holds. Returns the plans found, by
// practice day; none proves nothing. Spends `effort`.
std::vector<std::vector<DayChoice>> beam_search(const TinyPiece& piece, const Analysis& analysis,
                                                Effort& effort);

}  // namespace cahier
