#include "plan/quality/quality_figure.h"

#include <algorithm>

namespace cahier {

double Wanted::shortness(double figure) const {
  constexpr double kNothing = 1e9;  // nothing of what is wanted
  double most = 0;
  if (at_most) most = *at_most > 0 ? figure / *at_most : figure > 0 ? 1 + figure : 0;
  if (at_least && *at_least > 0) most = std::max(most, figure > 0 ? *at_least / figure : kNothing);
  return most;
}

}  // namespace cahier
