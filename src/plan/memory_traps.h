// Where a memory is most easily led astray, and what of the plan meets that.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// A fork, weighed.
struct MemoryTrap {
  int fork = 0;        // index into the piece's forks
  int bars_alike = 0;  // before it; of several ways those of the pair that is most dangerous
  double danger = 0;   // 0 to 1
};

// Every fork of the piece, the most dangerous first, then as they stand in the piece. The danger is
// fork_danger of the pair of ways, one of them the first, in which it is greatest: the bars alike
// come from the score where one tells, else from the piece file or the form, and the likeness of
// the bars beyond the fork from the score alone, else nothing. Ways that are the same again after
// one bar do less harm, and of a plain repeat only the times have to be counted: see
// practice/numbers. A score's passages at another pitch are no forks, so that all traps are in one
// register.
std::vector<MemoryTrap> memory_traps(const PlannedPiece& piece);

struct DatedTask {
  Date date;
  const Task* task = nullptr;
};

// What the plan has against a fork, each by date.
struct TrapAnswers {
  std::vector<DatedTask> fork_drills;   // that play one of its ways
  std::vector<DatedTask> spoken_parts;  // over the first bar of one of its ways
  std::vector<DatedTask> write_outs;    // likewise
  std::vector<const CueStart*> starts;  // beyond the fork: one of each way that has any, by bar
};

// REQUIRES: the plan outlives the result; `fork` is one of that piece's.
TrapAnswers answers_to(const Plan& plan, int piece, const Fork& fork);

// Whether a fork drill plays a way.
bool plays_way(const Task& task, const WayOn& way);

}  // namespace cahier
