// Lengths and positions in quarter notes, exact.
#pragma once

#include <compare>
#include <cstdint>
#include <stdexcept>
#include <string>

namespace cahier {

// A length that no score has: too long, or too finely divided for exact sums.
class OutOfQuarters : public std::runtime_error {
 public:
  OutOfQuarters() : std::runtime_error("a length is too long or too finely divided") {}
};

class Quarters {
 public:
  static constexpr std::int64_t kMost = 1000000;  // of the value, and of the lower number

  Quarters() = default;
  // In lowest terms. Throws OutOfQuarters beyond kMost. REQUIRES: lower > 0.
  Quarters(std::int64_t upper, std::int64_t lower);

  std::int64_t upper() const { return upper_; }
  std::int64_t lower() const { return lower_; }
  double value() const { return static_cast<double>(upper_) / static_cast<double>(lower_); }
  std::string text() const;  // "5/2", "3"

  Quarters operator+(const Quarters& other) const;
  Quarters operator-(const Quarters& other) const;
  bool operator==(const Quarters&) const = default;
  std::strong_ordering operator<=>(const Quarters& other) const {
    return upper_ * other.lower_ <=> other.upper_ * lower_;
  }

 private:
  std::int64_t upper_ = 0;
  std::int64_t lower_ = 1;
};

}  // namespace cahier
