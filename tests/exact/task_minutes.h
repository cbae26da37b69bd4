// How long each task takes, worked out from the method file's numbers as README and DEVELOPERS say,
// with no line of the program's own.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "small_work.h"

namespace exact {

// The numbers of a method file by their keys; those given for each level have five.
using Numbers = std::map<std::string, std::vector<double>>;

// Throws std::runtime_error when the file cannot be read.
Numbers read_numbers(const std::string& path);

// All in half minutes.
class TaskMinutes {
 public:
  // REQUIRES: both outlive this object.
  TaskMinutes(const SmallWork& work, const Numbers& method);

  int learn(const Bars& bars, int level) const;
  // A join, recall or counted pass: what goes over bars from memory. `tempo` is the key of its
  // share.
  int from_memory(const Bars& bars, int level, const std::string& tempo) const;
  // The same of a pass, and once more by the chance that one of its passages slips.
  int slow_pass(const Bars& bars, int level) const;
  int starts(int count) const;
  int run_through() const;

  double number(const std::string& key) const;

 private:
  double by_level(const std::string& key, int level) const;
  double once(const Bars& bars, int level, const std::string& tempo) const;
  // Minutes to play bars once at a share of their tempo, on the metronome's mark below it.
  double playing(const Bars& bars, double share) const;

  const SmallWork& work_;
  const Numbers& method_;
};

}  // namespace exact
