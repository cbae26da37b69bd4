// One piece while it is being laid out.
#pragma once

#include <vector>

#include "plan/anatomy.h"
#include "plan/fork_list.h"
#include "plan/join_list.h"
#include "plan/memory.h"
#include "plan/prove.h"
#include "plan/run_days.h"
#include "plan/task_maker.h"
#include "plan/temper_list.h"
#include "plan/terms.h"

namespace cahier {

struct Desk {
  Desk(const Anatomy& of, const Terms& terms, int piece, const std::vector<int>& practice_days,
       int end)
      : anatomy(of),
        make(of, terms.method, piece),
        memory(of, terms.method, practice_days, end),
        joins(of, terms.method),
        passes(of.stretches.size(), 0),
        forks(of),
        temper(of, terms),
        proof(of, terms, forks, temper) {}
  Desk(const Desk&) = delete;
  Desk& operator=(const Desk&) = delete;

  const Anatomy& anatomy;
  TaskMaker make;
  Memory memory;
  JoinList joins;
  std::vector<int> passes;  // whole recalls so far, by stretch
  ForkList forks;
  TemperList temper;
  Proof proof;
  RunDays runs;

  int next_run(int after) const {
    for (int day = after + 1; day < static_cast<int>(runs.runs.size()); ++day)
      if (runs.runs[day] > 0) return day;
    return -1;
  }
};

}  // namespace cahier
