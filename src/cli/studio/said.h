// What the commands of a studio say of its students.
#pragma once

#include <set>
#include <string>

#include "cli/studio/student_workbook.h"

namespace cahier {

// Says problems to standard error, each once: several students may learn one piece.
class Said {
 public:
  void say(const Outcome& outcome);

 private:
  std::set<std::string> before_;
};

// One line on standard error, where that is a terminal, for whoever waits.
class Progress {
 public:
  Progress();
  ~Progress() { clear(); }
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;

  void show(const std::string& line);
  // Before anything else is said.
  void clear();

 private:
  bool on_terminal_;
  std::size_t shown_ = 0;  // characters
};

// How many workbooks are made at a time.
std::size_t threads_for(const Request& request);

}  // namespace cahier
