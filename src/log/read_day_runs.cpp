#include <algorithm>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

void tell_run(const DayEntry& entry, const LoggedRun& run, EntriesOfDay& tasks,
              ReportedTask& task) {
  const BarRange whole = tasks.whole(task.done.piece);
  const auto bars = [&](const std::vector<Written<int>>& written) {
    std::vector<int> read;
    for (const Written<int>& bar : written) {
      if (!whole.contains(bar.value))
        tasks.faults().refuse(entry.spot(bar.at), no_such_bar(bar.value, whole));
      read.push_back(bar.value);
    }
    return read;
  };
  if (run.slips) task.done.slips = bars(*run.slips);
  task.done.rejoined = bars(run.rejoined);
  task.done.recorded = run.recorded;
  task.done.listener = run.listener;
  if (run.rejoined.empty()) return;
  const Spot spot = entry.spot(run.rejoined.front().at);
  if (!task.done.slips || task.done.slips->empty())
    return tasks.faults().refuse(spot, rejoined_without_slips());
  const int slip = *std::min_element(task.done.slips->begin(), task.done.slips->end());
  for (const Written<int>& bar : run.rejoined)
    if (bar.value < slip)
      tasks.faults().refuse(entry.spot(bar.at), rejoined_before_the_slip(bar.value, slip));
}

}  // namespace

void read_runs(const DayEntry& entry, EntriesOfDay& tasks) {
  for (const LoggedRun& run : entry.day->runs) {
    const auto piece = tasks.piece_of(entry);
    if (!piece) return;
    const BarRange whole = tasks.whole(*piece);
    ReportedTask* task = tasks.untold(Drill::run_through, *piece, whole);
    if (!task) task = &tasks.add(entry.spot(run.at), *piece, Drill::run_through, whole);
    task->told = true;
    tell_run(entry, run, tasks, *task);
  }
}

}  // namespace cahier
