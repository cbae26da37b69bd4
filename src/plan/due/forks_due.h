// The forks of look-alikes that are still to be drilled.
#pragma once

#include <list>
#include <vector>

#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"

namespace cahier {

class ForksDue {
 public:
  using Place = std::list<const Fork*>::const_iterator;

  // REQUIRES: the anatomy outlives this object.
  explicit ForksDue(const Analysis& analysis);

  Place begin() const { return waiting_.begin(); }
  Place end() const { return waiting_.end(); }
  void strike(Place place) { waiting_.erase(place); }

  // Whether all passages of the group, and all that the drill plays, were learned on an earlier
  // day.
  static bool ready(const Fork& fork, const RecallsDue& recalls, int day);
  static Task task(const Fork& fork, const TaskMaker& make);
  std::vector<Task> left_over(const TaskMaker& make) const;
  // Strikes those that cue starts met on a day, with everything learned before.
  void strike_met(const Task& task, const RecallsDue& recalls, int day);

 private:
  std::list<const Fork*> waiting_;
};

}  // namespace cahier
