// The value of a number in a build with CAHIER_ALTER: as written, or as the environment has it.
#pragma once

#include <cstdlib>
#include <string_view>

namespace cahier::numbers {

// CAHIER_NUMBER=name=value sets one number.
template <typename Number>
Number altered(std::string_view name, Number written) {
  const char* const set = std::getenv("CAHIER_NUMBER");
  if (!set) return written;
  const std::string_view text(set);
  if (!text.starts_with(name) || !text.substr(name.size()).starts_with('=')) return written;
  return static_cast<Number>(std::strtod(set + name.size() + 1, nullptr));
}

}  // namespace cahier::numbers
