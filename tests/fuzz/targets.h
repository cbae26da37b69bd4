// What the fuzz calls: each takes one input as the program would.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fuzz {

struct Target {
  std::string_view name;
  std::string_view kind;  // of its inputs; one that failed is kept as KIND-….txt
  bool prints;            // takes a sound input all the way to the PDF, or runs whole commands
  // Returns quietly, also after InputError and FileError, which are how a bad input is refused.
  // Throws std::logic_error when a refusal says nothing; anything else thrown is a fault.
  void (*take)(const std::string& input);
};

const std::vector<Target>& targets();

}  // namespace fuzz
