#include "plan/left_out.h"

#include <algorithm>

namespace cahier {
namespace {

void put_together(std::vector<BarRange>& bars) {
  std::sort(bars.begin(), bars.end());
  std::vector<BarRange> together;
  for (const BarRange& range : bars) {
    if (!together.empty() && range.first <= together.back().last + 1)
      together.back().last = std::max(together.back().last, range.last);
    else
      together.push_back(range);
  }
  bars = std::move(together);
}

}  // namespace

std::vector<LeftOut> left_out_of(const Plan& plan) {
  std::vector<LeftOut> kinds;
  for (const Unplaced& work : plan.unplaced) {
    auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const LeftOut& one) {
      return one.piece == work.piece && one.drill == work.drill && one.why == work.why;
    });
    if (kind == kinds.end())
      kind = kinds.insert(kind, {work.piece, work.drill, work.why, 0, 0, {}});
    kind->minutes += work.minutes;
    ++kind->tasks;
    kind->bars.push_back(work.bars);
  }
  for (LeftOut& kind : kinds) put_together(kind.bars);
  return kinds;
}

}  // namespace cahier
