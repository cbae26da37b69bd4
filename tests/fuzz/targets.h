// What the fuzz calls: each takes one input as the program would.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fuzz {

struct Target {
  std::string_view name;  // an input of it that failed is kept as NAME-….txt
  // Returns quietly, also after InputError and FileError, which are how a bad input is refused.
  // Throws std::logic_error when a refusal says nothing; anything else thrown is a fault.
  void (*take)(const std::string& input);
};

const std::vector<Target>& targets();

}  // namespace fuzz
