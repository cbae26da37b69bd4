// What is missing that spoken and written work must not stand in place of, and the days on which it
// should have come.
#pragma once

#include <optional>
#include <vector>

#include "plan/quality/placed_tasks.h"

namespace cahier::figures {

struct Missing {
  BarRange bars;
  DateSpan when{};
};

// The days within which the first run-through should come, after the first of them; none where that
// is not asked for.
std::optional<DateSpan> first_run_window(const PlacedPiece& piece);

// Sections that are not played whole in time.
std::vector<Missing> missing_sections(const PlacedPiece& piece);
// Seams that are not played within their days.
std::vector<Missing> missing_seams(const PlacedPiece& piece);
// Bars that lack a pass.
std::vector<Missing> missing_passes(const PlacedPiece& piece);

}  // namespace cahier::figures
