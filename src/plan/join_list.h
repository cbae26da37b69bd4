// The joins between neighbouring chunks that are still to be played.
#pragma once

#include <set>
#include <vector>

#include "plan/memory.h"
#include "plan/task_maker.h"

namespace cahier {

class JoinList {
 public:
  // REQUIRES: anatomy and method outlive this object.
  JoinList(const Anatomy& anatomy, const Method& method);

  // A chunk was learned: its joins with learned neighbours are now to be played.
  void learned(int chunk, const Memory& memory);

  // A task was played across whatever joins lie in its bars.
  void played(const Task& task);

  // Whether the join from one chunk on to the next, where both stand, is still to be played.
  bool waits(int chunk, int next) const;

  // Join tasks for all that is to be played, as far as `room` reaches: neighbouring joins in one
  // task, each from the beginning of the section's learned bars where a stretch's length and the
  // room allow it and `lead_in` asks for it. Marks them as played.
  std::vector<Task> take(const Memory& memory, const TaskMaker& make, double room,
                         bool lead_in = true);

  // Bars of the joins that were to be played and were not.
  std::vector<BarRange> left_over() const;

 private:
  BarRange bars(int first, int last) const;
  bool short_enough(int first, int last) const;

  const Anatomy& anatomy_;
  const Method& method_;
  std::set<int> open_;  // left passages of joins to be played
};

}  // namespace cahier
