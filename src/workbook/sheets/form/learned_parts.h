// What the sheets of a later edition show as done already.
#pragma once

#include <vector>

#include "workbook/book.h"
#include "workbook/parts/form_layout.h"

namespace cahier {

// By chunk: whether it was learned before this edition.
std::vector<bool> chunks_learned(const Plan& plan, int piece);

// Whether the bars of a part went right in a drill before: played whole, and without a
// reported slip. A drill whose result is not reported counts only when it is learning: `learned` as
// from chunks_learned.
bool went_right(const Plan& plan, int piece, const std::vector<bool>& learned, Drill drill,
                const FormPart& part);

// A bar's level: the piece's, or the weakness of its chunk where the log raised that.
// `parts` are those of the whole piece.
int shown_level(const PlannedPiece& piece, const std::vector<FormPart>& parts, int bar);

}  // namespace cahier
