// Damaged copies of sound inputs, the same for the same seed.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace fuzz {

// A generator of its own (splitmix64), so that a seed gives the same everywhere.
class Chance {
 public:
  explicit Chance(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next();
  // From 0 to below `bound`. REQUIRES: bound > 0.
  std::size_t below(std::size_t bound) { return static_cast<std::size_t>(next() % bound); }

 private:
  std::uint64_t state_;
};

// `text` after one to six changes: bytes turned, lines and stretches dropped, doubled, swapped or
// taken from `other`, numbers and words replaced by unlikely ones.
std::string damaged(const std::string& text, const std::string& other, Chance& chance);

}  // namespace fuzz
