#include <algorithm>
#include <optional>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

// From a cue start one plays on as far as the next.
bool plays(const ReportedTask& task, int bar, EntriesOfDay& tasks) {
  if (!covers(task.done.drill, Covers::starts)) return task.done.bars.contains(bar);
  if (task.throws > 0 && !task.told) return true;
  PastEdition* edition = task.edition ? task.edition : tasks.editions().of(tasks.date());
  const std::vector<int>& cues = tasks.editions().cue_bars(*edition, task.done.piece);
  std::optional<int> last;
  for (const int cue : cues)
    if (cue <= bar) last = std::max(cue, last.value_or(cue));
  if (!last) return false;
  const int begin = *last;
  return std::ranges::count(task.done.starts, begin) + std::ranges::count(task.done.hit, begin) +
             std::ranges::count(task.done.missed, begin) >
         0;
}

bool is_told_with_the_run(const ReportedTask& task) {
  return facts_of(task.done.drill).slips == Slips::with_the_run;
}

void note_slip(Done& done, int bar, bool mended) {
  done.slips->push_back(bar);
  if (mended) done.mended.push_back(bar);
}

void read_slip(int piece, int bar, bool mended, const Spot& spot, EntriesOfDay& tasks) {
  const BarRange whole = tasks.whole(piece);
  if (!whole.contains(bar)) return tasks.faults().refuse(spot, no_such_bar(bar, whole));
  const ReportedTask* other = nullptr;
  ReportedTask* silent = nullptr;
  for (ReportedTask& task : tasks.all()) {
    if (task.done.piece != piece || !plays(task, bar, tasks)) continue;
    if (task.done.drill == Drill::silent_run) {
      silent = &task;
      continue;
    }
    if (from_memory(task.done.drill)) return note_slip(task.done, bar, mended);
    if (!other || is_told_with_the_run(task)) other = &task;
  }
  if (silent) return note_slip(silent->done, bar, mended);
  if (other && !is_told_with_the_run(*other))
    tasks.faults().warn(spot, slip_while_learning(bar));
  else if (!tasks.is_open())
    tasks.faults().refuse(spot, other ? slip_of_a_run(bar) : slip_not_played(bar, tasks.date()));
}

}  // namespace

void read_slips(const DayEntry& entry, EntriesOfDay& tasks) {
  if (!entry.day->slips || entry.day->slips->empty()) return;
  const auto piece = tasks.piece_of(entry);
  if (!piece) return;
  const auto is_mended = [&](int bar) {
    return std::ranges::count(entry.day->mended, bar, &Written<int>::value) > 0;
  };
  for (const Written<int>& slip : *entry.day->slips)
    read_slip(*piece, slip.value, is_mended(slip.value), entry.spot(slip.at), tasks);
}

}  // namespace cahier
