#include "practice/best_gap.h"

#include <algorithm>
#include <cmath>

namespace cahier {
namespace {

// Halves go up: a gap too long costs much less than one too short (Cepeda et al. 2008). The sliver
// keeps a tie a tie when logarithms have blurred its last digit.
int whole_days(double gap) { return static_cast<int>(std::floor(gap + 0.5 + 1e-9)); }

}  // namespace

double best_gap(const Method& method, double horizon) {
  const auto& pairs = method.spacing;
  if (pairs.empty() || horizon <= 0) return 1;
  const auto span_of = [](const Method::Spacing& pair) { return pair.delay + pair.gap; };
  if (pairs.size() == 1) return std::max(1.0, pairs[0].gap * horizon / span_of(pairs[0]));

  std::size_t right = 1;
  while (right + 1 < pairs.size() && span_of(pairs[right]) < horizon) ++right;
  const auto& low = pairs[right - 1];
  const auto& high = pairs[right];
  const double slope = std::log(high.gap / low.gap) / std::log(span_of(high) / span_of(low));
  return std::max(1.0, low.gap * std::pow(horizon / span_of(low), slope));
}

int best_gap_days(const Method& method, int horizon) {
  return whole_days(best_gap(method, horizon));
}

int longest_gap_days(const Method& method, int horizon) {
  return std::max(1, whole_days(method.longest_gap * best_gap(method, horizon)));
}

}  // namespace cahier
