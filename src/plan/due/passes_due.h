// Slow and counted passes over every bar where it stands, those of returns too.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"

namespace cahier {

class PassesDue {
 public:
  PassesDue(const Analysis& analysis, const Method& method);

  // The passes that are still to be played, of those whose bars were last played so many best gaps
  // ago, and that `room` minutes hold: a slow and a counted one over each stretch, `times` of each;
  // the stretches with the fewest come first.
  std::vector<Task> on_day(const RecallsDue& recalls, const TaskMaker& make, int day, double room,
                           int times, double gaps) const;

  // `task` was played from memory.
  void played(const Task& task);

 private:
  struct Span {
    BarRange bars;
    int slow = 0;
    int counted = 0;
    bool hard = false;  // its turn comes twice as often

    int turns() const { return (slow + counted) * (hard ? 1 : 2); }
  };

  std::vector<Span> spans_;
};

}  // namespace cahier
