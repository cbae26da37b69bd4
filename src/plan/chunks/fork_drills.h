// Which starts drill which forks.
#pragma once

#include <set>

#include "plan/chunks/analysis.h"

namespace cahier {

// Adds to `bars`, where cue starts stand, those that lead into a way on at a fork: before
// look-alikes part one in each passage; before a fork that was found one where there is none a
// chunk's length before it. None is added where one that earlier workbooks `numbered` leads into
// look-alikes' fork. REQUIRES: the analysis has its passages and forks.
void add_cues_before_forks(const Analysis& analysis, const Method& method,
                           const std::vector<int>& numbered, std::set<int>& bars);

// Fills in the drills. The starts of look-alikes are made longer, past their fork; others play no
// more for certain than any cue start. REQUIRES: the analysis has its cue starts, among them those
// that add_cues_before_forks asks for.
void add_fork_drills(Analysis& analysis, const Method& method);

}  // namespace cahier
