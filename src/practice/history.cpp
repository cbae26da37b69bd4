#include "practice/history.h"

#include <algorithm>

namespace cahier {
namespace {

// The bars whose notes are played in `bars`, as stretches where they are learned.
std::vector<BarRange> where_learned(const LearnedBars& all, BarRange bars) {
  std::vector<BarRange> learned;
  for (int bar = bars.first; bar <= bars.last; ++bar) {
    const int source = all.source(bar);
    if (!learned.empty() && learned.back().last + 1 == source)
      learned.back().last = source;
    else
      learned.push_back({source, source});
  }
  return learned;
}

bool holds(const std::vector<BarRange>& held, BarRange chunk) {
  return std::any_of(held.begin(), held.end(),
                     [&](const BarRange& bars) { return bars.contains(chunk); });
}

bool slipped_in(const std::vector<int>& slips, BarRange chunk) {
  return std::any_of(slips.begin(), slips.end(), [&](int bar) { return chunk.contains(bar); });
}

}  // namespace

History::History(const Record& record, int index, const Piece& piece)
    : learned_(record, index, piece) {
  if (index < static_cast<int>(record.starts.size())) starts_ = record.starts[index];
  for (const Done& done : record.done)
    if (done.piece == index) add_trials(done);
}

void History::add_trials(const Done& done) {
  const auto from_start = [&](int bar, bool held) {
    const int source = learned_.source(bar);
    trials_.push_back(
        {done.date, {{source, source}}, held ? std::vector<int>{} : std::vector{source}, true});
  };
  for (const int bar : done.hit) from_start(bar, true);
  for (const int bar : done.missed) from_start(bar, false);
  if (done.drill == Drill::silent_run) return;  // in the head, nothing is put to the test
  if (!done.slips || facts_of(done.drill).slips == Slips::nowhere) return;
  if (covers(done.drill, Covers::starts)) {
    for (const int bar : *done.slips) from_start(bar, false);
    return;
  }
  Trial trial{done.date, where_learned(learned_, done.bars), {}, false};
  for (const int bar : *done.slips) trial.slips.push_back(learned_.source(bar));
  trials_.push_back(std::move(trial));
}

SlipCount History::slips(BarRange chunk) const {
  SlipCount count;
  for (const Trial& trial : trials_) {
    const bool slipped = slipped_in(trial.slips, chunk);
    const bool played = trial.start ? chunk.contains(trial.held.front()) : holds(trial.held, chunk);
    if (!slipped && !played) continue;
    ++count.trials;
    if (slipped) ++count.slips;
  }
  return count;
}

std::optional<Date> History::last_slip(BarRange chunk) const {
  std::optional<Date> last;
  for (const Trial& trial : trials_)
    if (slipped_in(trial.slips, chunk) && (!last || trial.date > *last)) last = trial.date;
  return last;
}

std::vector<History> histories_of(const Record& record, const std::vector<Piece>& pieces) {
  std::vector<History> histories;
  for (std::size_t piece = 0; piece < pieces.size(); ++piece)
    histories.emplace_back(record, static_cast<int>(piece), pieces[piece]);
  return histories;
}

}  // namespace cahier
