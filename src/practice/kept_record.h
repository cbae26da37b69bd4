// What is taken for granted of a piece that is kept.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "practice/learned_bars.h"
#include "practice/method.h"
#include "practice/record.h"

namespace cahier {

// What must have been done of a piece that is to be kept, where no log tells of it: of a piece of
// which nothing is known to be learned that it was learned, joined and tempered in time and played
// on the day before `from`; of one that is partly known, that the rest was learned by then.
std::vector<Done> taken_as_done(const Piece& piece, int index, const Method& method, Date from,
                                const LearnedBars& known);

// The record with that for every piece.
Record as_kept(Record record, const std::vector<Piece>& pieces, const Method& method, Date from);

}  // namespace cahier
