#include "paper/bar_share.h"

#include <algorithm>
#include <map>

namespace cahier {

double usual_length(const std::vector<StaffBar>& bars) {
  std::map<double, int> counts;
  for (const StaffBar& bar : bars) ++counts[bar.length];
  double usual = 1;
  int most = 0;
  for (const auto& [length, count] : counts) {
    if (count >= most) {
      most = count;
      usual = length;
    }
  }
  return usual > 0 ? usual : 1;
}

double bar_share(const StaffBar& bar, double usual) { return std::max(0.5, bar.length / usual); }

}  // namespace cahier
