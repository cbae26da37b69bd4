// How much the planner may try before it answers with what it has found.
#pragma once

#include <string>

#include "text/limits.h"

namespace cahier {

// Is told what a search tries, for whoever waits for it.
class SearchWatch {
 public:
  virtual ~SearchWatch() = default;
  // A change of what was asked for, in the words to type: "--minutes 22".
  virtual void tries(const std::string& change) = 0;
  // Often, as long as it lasts.
  virtual void goes_on() = 0;
};

// Counted in chunks times days that were laid on a calendar, and in the tasks put there: the same
// on every computer.
class Effort {
 public:
  // REQUIRES: `watch`, where there is one, outlives this object.
  explicit Effort(double most = kMostEffort, SearchWatch* watch = nullptr)
      : most_(most), watch_(watch) {}

  void spend(double chunk_days) {
    spent_ += chunk_days;
    if (watch_) watch_->goes_on();
  }
  double spent() const { return spent_; }
  bool used_up() const { return spent_ >= most_; }
  SearchWatch* watch() const { return watch_; }

 private:
  double most_;
  double spent_ = 0;
  SearchWatch* watch_;
};

}  // namespace cahier
