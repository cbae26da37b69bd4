#include "practice/method.h"

#include <algorithm>

namespace cahier {

int Method::days_between_runs(int left) const {
  const auto step = std::find_if(runs_apart.rbegin(), runs_apart.rend(),
                                 [&](const RunsApart& one) { return left >= one.left; });
  return step == runs_apart.rend() ? 1 : step->days;
}

Method Method::with_chunks_up_to(int bars) const {
  Method method = *this;
  method.chunk_minutes *= static_cast<double>(bars) / chunk_most;
  method.chunk_most = bars;
  return method;
}

}  // namespace cahier
