// The seams out of sections that come back, joined again and again as forks are.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/task_maker.h"

namespace cahier {

// Of those that no fork drill plays. They are played as often as a fork is drilled, each time
// farther from the last, where a day has room; that they are joined once is for JoinsDue.
class ReturnSeamsDue {
 public:
  // REQUIRES: analysis and method outlive this object.
  ReturnSeamsDue(const Analysis& analysis, const Method& method);

  // `task` stands on a day; tasks come in the order of days.
  void played(const Task& task, int day);

  // Joins of the seams whose next turn has come; `end` is the date.
  std::vector<Task> on_day(int day, int end, const TaskMaker& make) const;

 private:
  struct Seam {
    BarRange bars;  // of the passages that meet
    int at = 0;     // the last bar before it
    int times = 0;  // days on which it was played
    int first = -1;
    int last = -1;
  };
  bool is_due(const Seam& seam, int day, int end) const;

  const Method& method_;
  std::vector<Seam> seams_;  // by bar
};

}  // namespace cahier
