#include "score/notation/quarters.h"

#include <fmt/format.h>

#include <cstdlib>
#include <numeric>

namespace cahier {

Quarters::Quarters(std::int64_t upper, std::int64_t lower) {
  const std::int64_t common = std::gcd(upper, lower);
  upper_ = upper / common;
  lower_ = lower / common;
  if (lower_ > kMost || std::abs(upper_ / lower_) > kMost) throw OutOfQuarters();
}

std::string Quarters::text() const {
  return lower_ == 1 ? fmt::format("{}", upper_) : fmt::format("{}/{}", upper_, lower_);
}

// With values and lower numbers up to a million, sums stay below 2^63.
Quarters Quarters::operator+(const Quarters& other) const {
  return {upper_ * other.lower_ + other.upper_ * lower_, lower_ * other.lower_};
}

Quarters Quarters::operator-(const Quarters& other) const {
  return {upper_ * other.lower_ - other.upper_ * lower_, lower_ * other.lower_};
}

}  // namespace cahier
