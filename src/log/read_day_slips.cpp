#include <algorithm>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

// From a cue start one plays on as far as the next.
bool plays(const Deed& deed, int bar, DayDeeds& deeds) {
  if (deed.done.drill != Drill::cue_starts) return deed.done.bars.contains(bar);
  if (deed.throws > 0 && !deed.told) return true;
  PastEdition* edition = deed.edition ? deed.edition : deeds.editions().of(deeds.date());
  const std::vector<int>& cues = deeds.editions().cue_bars(*edition, deed.done.piece);
  const auto next = std::upper_bound(cues.begin(), cues.end(), bar);
  if (next == cues.begin()) return false;
  const int begin = *(next - 1);
  return std::ranges::count(deed.done.starts, begin) + std::ranges::count(deed.done.hit, begin) +
             std::ranges::count(deed.done.missed, begin) >
         0;
}

void read_slip(int piece, int bar, const Spot& spot, DayDeeds& deeds) {
  const BarRange whole = deeds.whole(piece);
  if (!whole.contains(bar)) return deeds.faults().refuse(spot, no_such_bar(bar, whole));
  const Deed* other = nullptr;
  for (Deed& deed : deeds.all()) {
    if (deed.done.piece != piece || !plays(deed, bar, deeds)) continue;
    if (from_memory(deed.done.drill)) return deed.done.slips->push_back(bar);
    if (!other || deed.done.drill == Drill::run_through) other = &deed;
  }
  if (other && other->done.drill != Drill::run_through)
    deeds.faults().warn(spot, slip_while_learning(bar));
  else if (!deeds.is_open())
    deeds.faults().refuse(spot, other ? slip_of_a_run(bar) : slip_not_played(bar, deeds.date()));
}

}  // namespace

void read_slips(const DayEntry& entry, DayDeeds& deeds) {
  if (!entry.day->slips || entry.day->slips->empty()) return;
  const auto piece = deeds.piece_of(entry);
  if (!piece) return;
  for (const Written<int>& slip : *entry.day->slips)
    read_slip(*piece, slip.value, entry.spot(slip.at), deeds);
}

}  // namespace cahier
