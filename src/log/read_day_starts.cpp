#include <algorithm>

#include "log/entries_of_day.h"

namespace cahier {
namespace {

// The one deed of a day's cue starts that were told one by one; codes of that day join it.
Deed& told_starts(const DayEntry& entry, int piece, DayDeeds& deeds) {
  const auto of_starts = [&](const Deed& deed) {
    return deed.done.drill == Drill::cue_starts && deed.done.piece == piece;
  };
  std::vector<Deed>& all = deeds.all();
  const auto first = std::find_if(all.begin(), all.end(), of_starts);
  if (first == all.end())
    return deeds.add(entry.spot(entry.day->date.at), piece, Drill::cue_starts, deeds.whole(piece));
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

void read_starts(const DayEntry& entry, DayDeeds& deeds) {
  if (entry.day->hit.empty() && entry.day->missed.empty()) return;
  const auto piece = deeds.piece_of(entry);
  PastEdition* edition = deeds.editions().of(deeds.date());
  if (!piece || !edition) return;
  Deed& deed = told_starts(entry, *piece, deeds);
  deed.told = true;
  const auto take = [&](const std::vector<Written<int>>& numbers, std::vector<int>& bars) {
    for (const Written<int>& number : numbers) {
      const Spot spot = entry.spot(number.at);
      const auto bar = deeds.cue_bar(*edition, *piece, number.value, spot);
      if (!bar) continue;
      bars.push_back(*bar);
      std::erase(deed.done.starts, *bar);
      deeds.check_bars(*piece, {*bar, *bar}, Drill::cue_starts, spot, "");
    }
  };
  take(entry.day->hit, deed.done.hit);
  take(entry.day->missed, deed.done.missed);
  std::vector<int> all = deed.done.starts;
  all.insert(all.end(), deed.done.hit.begin(), deed.done.hit.end());
  all.insert(all.end(), deed.done.missed.begin(), deed.done.missed.end());
  deed.done.bars = around(all, deeds.whole(*piece));
}

}  // namespace cahier
