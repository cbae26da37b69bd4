#include "practice/learned_bars.h"

#include <algorithm>
#include <set>

namespace cahier {
namespace {

std::vector<BarRange> ranges_of(const std::set<int>& bars) {
  std::vector<BarRange> ranges;
  for (const int bar : bars)
    if (!ranges.empty() && ranges.back().last + 1 == bar)
      ranges.back().last = bar;
    else
      ranges.push_back({bar, bar});
  return ranges;
}

}  // namespace

LearnedBars::LearnedBars(const Piece& piece)
    : first_bar_(piece.first_bar()), source_(piece.learned_bars()) {}

LearnedBars::LearnedBars(const Record& record, int index, const Piece& piece) : LearnedBars(piece) {
  for (const Done& done : record.done)
    if (done.piece == index && done.drill == Drill::learn) learn(done.bars, done.date);
}

void LearnedBars::learn(BarRange bars, Date date) {
  std::set<int> fresh;
  for (int bar = bars.first; bar <= bars.last; ++bar)
    if (!since(bar)) fresh.insert(source(bar));
  for (const int bar : fresh) since_.emplace(bar, date);
  for (const BarRange& range : ranges_of(fresh))
    at_one_time_.insert(std::upper_bound(at_one_time_.begin(), at_one_time_.end(), range), range);
}

int LearnedBars::source(int bar) const {
  return 0 <= bar && bar < static_cast<int>(source_.size()) ? source_[bar] : bar;
}

std::optional<Date> LearnedBars::since(int bar) const {
  const auto found = since_.find(source(bar));
  return found == since_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<int> LearnedBars::first_unlearned(BarRange bars) const {
  for (int bar = bars.first; bar <= bars.last; ++bar)
    if (!since(bar)) return bar;
  return std::nullopt;
}

std::vector<BarRange> LearnedBars::unlearned() const {
  std::set<int> all;
  for (int bar = first_bar_; bar < static_cast<int>(source_.size()); ++bar)
    if (!since(bar)) all.insert(source(bar));
  return ranges_of(all);
}

std::vector<BarRange> LearnedBars::sources(BarRange bars) const {
  std::set<int> all;
  for (int bar = bars.first; bar <= bars.last; ++bar) all.insert(source(bar));
  return ranges_of(all);
}

}  // namespace cahier
