#include <algorithm>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

void tell_run(const DayEntry& entry, const LoggedRun& run, DayDeeds& deeds, Deed& deed) {
  const BarRange whole = deeds.whole(deed.done.piece);
  const auto bars = [&](const std::vector<Written<int>>& written) {
    std::vector<int> read;
    for (const Written<int>& bar : written) {
      if (!whole.contains(bar.value))
        deeds.faults().refuse(entry.spot(bar.at), no_such_bar(bar.value, whole));
      read.push_back(bar.value);
    }
    return read;
  };
  if (run.slips) deed.done.slips = bars(*run.slips);
  deed.done.rejoined = bars(run.rejoined);
  deed.done.recorded = run.recorded;
  deed.done.listener = run.listener;
  if (run.rejoined.empty()) return;
  const Spot spot = entry.spot(run.rejoined.front().at);
  if (!deed.done.slips || deed.done.slips->empty())
    return deeds.faults().refuse(spot, rejoined_without_slips());
  const int slip = *std::min_element(deed.done.slips->begin(), deed.done.slips->end());
  for (const Written<int>& bar : run.rejoined)
    if (bar.value < slip)
      deeds.faults().refuse(entry.spot(bar.at), rejoined_before_the_slip(bar.value, slip));
}

}  // namespace

void read_runs(const DayEntry& entry, DayDeeds& deeds) {
  for (const LoggedRun& run : entry.day->runs) {
    const auto piece = deeds.piece_of(entry);
    if (!piece) return;
    const BarRange whole = deeds.whole(*piece);
    Deed* deed = deeds.untold(Drill::run_through, *piece, whole);
    if (!deed) deed = &deeds.add(entry.spot(run.at), *piece, Drill::run_through, whole);
    deed->told = true;
    tell_run(entry, run, deeds, *deed);
  }
}

}  // namespace cahier
