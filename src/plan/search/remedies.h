// What would make a plan fit.
#pragma once

#include <optional>
#include <vector>

#include "plan/plan.h"
#include "plan/schedule/effort.h"
#include "plan/terms.h"

namespace cahier {

// Remedies for work that does not fit, a few at most, the least demanding first; each was tried
// with the planner and gives a plan that fits: more minutes a day, an earlier start, a later date,
// no Temper, fewer repetitions, larger chunks. Of each kind the least that fits; and pairs of them,
// where together they ask less than either of the two by itself and neither part of the pair is
// enough alone. Empty when none helps.
//
// How much one asks is told beside Lever::asks; a pair asks the root of the sum of the squares of
// its parts, since two small changes are easier to live with than one large one.
//
// Pairs are looked for only while bars times days are at most 20,000: beyond, the planner would
// have to be asked for too long. No start lies before `earliest_start`, where there is one.
std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms,
                             std::optional<Date> earliest_start = std::nullopt);
// Those that are found before `effort` is used up, where each may still ask more than needed. It is
// used up as well where one change, or all pairs together, took more than their share of it.
std::vector<Remedy> remedies(const std::vector<Piece>& pieces, const Terms& terms,
                             std::optional<Date> earliest_start, Effort& effort);

}  // namespace cahier
