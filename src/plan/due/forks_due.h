// The forks that are still to be drilled.
#pragma once

#include <list>
#include <vector>

#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"

namespace cahier {

class ForksDue {
 public:
  struct Waiting {
    const ForkDrill* fork;
    int drills = 0;  // so far
    int first = -1;  // day of the first, or -1
    int last = -1;   // day of the latest, or -1
  };
  using Place = std::list<Waiting>::iterator;

  // REQUIRES: the anatomy and the method outlive this object.
  ForksDue(const Analysis& analysis, const Method& method);

  Place begin() { return waiting_.begin(); }
  Place end() { return waiting_.end(); }
  // It is drilled on that day; the last of its drills strikes it out.
  void drilled(Place place, int day);

  // Whether a fork that was drilled before is to be drilled again, `end` being the date: twice, at
  // growing distance, the last time near the date; where few weeks are left, once near the date.
  bool again(const Waiting& one, int day, int end, int last_learned) const;

  // Whether all that the drill plays, and all passages that look alike, were learned on an earlier
  // day.
  static bool ready(const ForkDrill& fork, const RecallsDue& recalls, int day);
  static Task task(const ForkDrill& fork, const TaskMaker& make);
  // How many of the forks that are due on a day it should hold: one, or two where that leaves some
  // without a day: before the date on the last days, else within the next few.
  int most_on(int day, int end, std::size_t due, int practice_days_left) const;
  // Those that a rule asks for and that were never drilled.
  std::vector<Task> left_over(const TaskMaker& make) const;
  // Strikes those that cue starts met on a day, with everything learned before.
  void strike_met(const Task& task, const RecallsDue& recalls, int day);

 private:
  // Days before the date, from when on the last drill may come.
  int last_drill() const;

  const Method& method_;
  std::list<Waiting> waiting_;
};

}  // namespace cahier
