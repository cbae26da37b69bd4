#include "plan/schedule/best_fill.h"

#include <algorithm>
#include <cmath>

namespace cahier {

std::vector<int> best_fill(const std::vector<double>& minutes, double room) {
  const int halves = static_cast<int>(std::floor(room * 2 + 1e-9));
  if (halves <= 0) return {};
  // By half minutes: the task that was added last to reach them, taken in order; -2 for none.
  std::vector<int> last(static_cast<std::size_t>(halves) + 1, -2);
  last[0] = -1;
  std::vector<std::vector<int>> reached = {last};
  for (int task = 0; task < static_cast<int>(minutes.size()); ++task) {
    const int size = static_cast<int>(std::lround(minutes[task] * 2));
    for (int sum = halves; sum >= size; --sum)
      if (last[sum] == -2 && last[sum - size] != -2) last[sum] = task;
    reached.push_back(last);
  }
  int sum = halves;
  while (last[sum] == -2) --sum;
  std::vector<int> chosen;
  for (int after = static_cast<int>(minutes.size()); sum > 0;) {
    const int task = reached[after][sum];
    chosen.push_back(task);
    sum -= static_cast<int>(std::lround(minutes[task] * 2));
    after = task;  // what came before it was reached without it
  }
  std::reverse(chosen.begin(), chosen.end());
  return chosen;
}

}  // namespace cahier
