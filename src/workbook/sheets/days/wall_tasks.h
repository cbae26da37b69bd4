// What a day asks for, as it is read from the wall: bars first, the drill's name below.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// What is set large, once: "17–20", "2 × 1–96"; "5" with an arrow behind it, "4 ×" with a die.
enum class Behind { nothing, arrow, die };
struct WallEntry {
  std::string text;
  Behind behind = Behind::nothing;
};

// Tasks of one drill and one piece.
struct WallGroup {
  Drill drill = Drill::learn;
  bool fork = false;
  int piece = 0;                   // index into the plan's pieces
  std::vector<WallEntry> entries;  // at least one
  std::string name;                // of the drill: "slow passes"
};

// `neighbours`: tasks that follow one another in the day's order stand together, and new bars that
// follow one another are one range. `all`: whatever is of one drill and piece stands where the
// first of it does, and bars that touch are one range, unless they are to be played in one go.
enum class Together { neighbours, all };

// In the day's order.
std::vector<WallGroup> wall_groups(const Words& words, const Plan& plan, const Day& day,
                                   Together together);

}  // namespace cahier
