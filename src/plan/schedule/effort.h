// How much the planner may try before it answers with what it has found.
#pragma once

#include "text/limits.h"

namespace cahier {

// Counted in chunks times days that were laid on a calendar, and in the tasks put there: the same
// on every computer.
class Effort {
 public:
  explicit Effort(double most = kMostEffort) : left_(most) {}

  void spend(double chunk_days) { left_ -= chunk_days; }
  bool used_up() const { return left_ <= 0; }

 private:
  double left_;
};

}  // namespace cahier
