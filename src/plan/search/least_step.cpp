#include "plan/search/least_step.h"

#include <algorithm>

namespace cahier {
namespace {

// Some step that fits, asked for from the largest downwards, `ripple` times: by halves, and one at
// a time where the ripple reaches to the smallest.
std::optional<int> any_step(int most, int ripple, const std::function<bool(int)>& fits) {
  int step = most;
  for (int asked = 0; asked < ripple && step > 0; ++asked) {
    if (fits(step)) return step;
    step = step > ripple ? step / 2 : step - 1;
  }
  return std::nullopt;
}

// The highest of the `ripple` steps below `step` that fits.
std::optional<int> next_lower(int step, int ripple, const std::function<bool(int)>& fits) {
  for (int lower = step - 1; lower > 0 && lower >= step - ripple; --lower)
    if (fits(lower)) return lower;
  return std::nullopt;
}

}  // namespace

std::optional<int> least_step(int most, int ripple, const std::function<bool(int)>& fits) {
  std::optional<int> found = any_step(most, ripple, fits);
  if (!found) return std::nullopt;
  int too_small = 0;
  while (*found - too_small > 1) {
    const int middle = too_small + (*found - too_small) / 2;
    if (fits(middle))
      found = middle;
    else
      too_small = middle;
  }
  while (const auto lower = next_lower(*found, ripple, fits)) found = lower;
  return found;
}

}  // namespace cahier
