#include <algorithm>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

// The one task of a day's cue starts that were reported one by one; codes of that day are added to
// it.
ReportedTask& told_starts(const DayEntry& entry, int piece, EntriesOfDay& tasks) {
  const auto of_starts = [&](const ReportedTask& task) {
    return task.done.drill == Drill::cue_starts && task.done.piece == piece;
  };
  std::vector<ReportedTask>& all = tasks.all();
  const auto first = std::find_if(all.begin(), all.end(), of_starts);
  if (first == all.end())
    return tasks.add(entry.spot(entry.day->date.at), piece, Drill::cue_starts, tasks.whole(piece));
  std::vector<int>& starts = first->done.starts;
  for (auto other = first + 1; other != all.end();) {
    if (!of_starts(*other)) {
      ++other;
      continue;
    }
    starts.insert(starts.end(), other->done.starts.begin(), other->done.starts.end());
    other = all.erase(other);
  }
  return *first;
}

}  // namespace

void read_starts(const DayEntry& entry, EntriesOfDay& tasks) {
  if (entry.day->hit.empty() && entry.day->missed.empty()) return;
  const auto piece = tasks.piece_of(entry);
  PastEdition* edition = tasks.editions().of(tasks.date());
  if (!piece || !edition) return;
  ReportedTask& task = told_starts(entry, *piece, tasks);
  task.told = true;
  const auto take = [&](const std::vector<Written<int>>& numbers, std::vector<int>& bars) {
    for (const Written<int>& number : numbers) {
      const Spot spot = entry.spot(number.at);
      const auto bar = tasks.cue_bar(*edition, *piece, number.value, spot);
      if (!bar) continue;
      bars.push_back(*bar);
      std::erase(task.done.starts, *bar);
      tasks.check_bars(*piece, {*bar, *bar}, Drill::cue_starts, spot, "");
    }
  };
  take(entry.day->hit, task.done.hit);
  take(entry.day->missed, task.done.missed);
  std::vector<int> all = task.done.starts;
  all.insert(all.end(), task.done.hit.begin(), task.done.hit.end());
  all.insert(all.end(), task.done.missed.begin(), task.done.missed.end());
  task.done.bars = around(all, tasks.whole(*piece));
}

}  // namespace cahier
