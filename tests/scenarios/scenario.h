// A scenario file in memory: what it shows, its input files, its runs and what each must leave.
#pragma once

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace scenario {

// One command and everything expected after it. Absent output is not looked at, except that a
// command without an expected error text must write none.
struct Step {
  std::string command;
  int exit_code = 0;
  std::optional<std::string> out;
  std::optional<std::string> err;
  std::vector<std::pair<std::string, std::string>> files;  // path, expected text
  std::vector<std::string> absent;                         // paths that must not be there
};

struct Scenario {
  std::string shows;
  std::vector<std::pair<std::string, std::string>> inputs;  // path, text
  std::vector<Step> steps;
};

// Throws std::runtime_error with the number of the line that is wrong.
Scenario read_scenario(const std::string& text);

// True when `actual` is as `expected` says: a line of "…" alone stands for any lines, none too;
// "…" inside a line for any characters. The end of the last line may be missing on either side.
bool matches(const std::string& expected, const std::string& actual);

}  // namespace scenario
