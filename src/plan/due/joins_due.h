// The joins between neighbouring chunks that are still to be played.
#pragma once

#include <functional>
#include <map>
#include <vector>

#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"

namespace cahier {

class JoinsDue {
 public:
  // REQUIRES: anatomy and method outlive this object.
  JoinsDue(const Analysis& analysis, const Method& method);

  // A chunk was learned on a day: its joins with learned neighbours are now to be played.
  void learned(int chunk, int day, const RecallsDue& recalls);

  // A task was played across whatever joins lie in its bars.
  void played(const Task& task);

  // Whether the join from one chunk on to the next, where both stand, is still to be played.
  bool waits(int chunk, int next) const;

  // Which joins are taken, and how.
  struct Taking {
    int since = 0;        // those that could be played on this day or before
    bool lead_in = true;  // from the beginning of the section's learned bars, if there is room
    std::function<bool(const Task&)> accept = nullptr;  // nullptr for every task
  };

  // Join tasks, as far as `room` reaches: neighbouring joins in one task, as long as a stretch may
  // be. Marks them as played.
  std::vector<Task> take(const RecallsDue& recalls, const TaskMaker& make, double room,
                         const Taking& taking);

  // Bars of the joins that were to be played and were not.
  std::vector<BarRange> left_over() const;

 private:
  BarRange bars(int first, int last) const;
  bool short_enough(int first, int last) const;

  const Analysis& analysis_;
  const Method& method_;
  std::map<int, int> open_;  // left passages of joins to be played, and since which day
};

}  // namespace cahier
