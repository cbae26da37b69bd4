// How much the planner may try before it answers with what it has found.
#pragma once

#include "text/limits.h"

namespace cahier {

// Counted in chunks times days that were laid on a calendar, and in the tasks put there: the same
// on every computer.
class Effort {
 public:
  explicit Effort(double most = kMostEffort) : most_(most) {}

  void spend(double chunk_days) { spent_ += chunk_days; }
  double spent() const { return spent_; }
  bool used_up() const { return spent_ >= most_; }

 private:
  double most_;
  double spent_ = 0;
};

}  // namespace cahier
