// Where the player stands when an edition begins, as the log tells it.
#pragma once

#include <optional>
#include <vector>

#include "plan/plan.h"

namespace cahier {

inline bool is_later_edition(const Plan& plan) { return plan.record.edition > 1; }

// Whether anything was done before the plan's first day. Of a first edition, which keeps a piece
// that no log tells of, it is only taken for granted: its dates are nobody's.
inline bool has_past(const Plan& plan) { return !plan.record.empty() || !plan.past.empty(); }

// Whether something is left to learn, in the plan or among what found no place in it.
bool has_new_bars(const Plan& plan);

// By chunk: the day it was learned on, before the plan's first day; none where it was not.
std::vector<std::optional<Date>> learned_before(const Plan& plan, int piece);

// The run-throughs that the log tells of, by date.
std::vector<const Done*> runs_made(const Plan& plan, int piece);

struct RunScore {
  int told = 0;    // run-throughs of which somebody said how they went
  int clean = 0;   // of these
  int untold = 0;  // the others
};
RunScore score_of(const std::vector<const Done*>& runs);

struct WeakSpot {
  int piece = 0;
  int chunk = 0;
};
// The chunks that the log made weaker than the piece says, those that slip most first.
std::vector<WeakSpot> weak_spots(const Plan& plan);

// The last day on which a slip of that chunk was mended; none where none was.
std::optional<Date> last_mended(const Plan& plan, const WeakSpot& spot);

// New bars that the workbook before set for a day that passed without them, and the day on which
// the last of them is learned now.
struct MovedBars {
  int piece = 0;  // index
  BarRange bars;
  Date from;
  Date to;
};
// By the day they were set for; what moved together is one. Bars that find no place are left out.
std::vector<MovedBars> moved_bars(const Plan& plan);

// How many times the minutes first planned learning takes, over the bars of all chunks.
double mean_pace(const Plan& plan);

// Minutes that learning a bar of one part takes at a level, over the chunks that have it in the
// piece, whatever the log makes of them.
struct LevelPace {
  int level = 1;
  double first = 0;  // by the method
  double now = 0;    // at the player's pace
};
// The levels that the pieces have, where the player's pace is not the method's; else empty.
std::vector<LevelPace> level_paces(const Plan& plan);

}  // namespace cahier
