#include "piece/piece.h"

#include <algorithm>

namespace cahier {
namespace {

// The last given value of a field among the changes up to and including `bar`.
template <typename T>
std::optional<T> latest(const std::vector<Change>& changes, int bar,
                        std::optional<T> Change::*field, const std::optional<T>& initial) {
  auto change = std::upper_bound(changes.begin(), changes.end(), bar,
                                 [](int wanted, const Change& each) { return wanted < each.bar; });
  while (change != changes.begin())
    if (const auto& value = (*--change).*field) return value;
  return initial;
}

const Section* section_of(const std::vector<Section>& sections, int bar) {
  const auto after =
      std::upper_bound(sections.begin(), sections.end(), bar,
                       [](int wanted, const Section& each) { return wanted < each.bars.first; });
  if (after == sections.begin()) return nullptr;
  const Section& section = *(after - 1);
  return section.bars.contains(bar) ? &section : nullptr;
}

std::vector<Repeat> repeats_in(BarRange bars, const std::vector<Repeat>& repeats) {
  std::vector<Repeat> inside;
  for (const Repeat& repeat : repeats)
    if (bars.contains(repeat.reach())) inside.push_back(repeat);
  return inside;
}

// The bars of `stretch` in playing order; `inner` are the repeats inside it, outer before inner.
std::vector<BarRange> played(BarRange stretch, const std::vector<Repeat>& inner) {
  std::vector<BarRange> order;
  int bar = stretch.first;
  for (std::size_t index = 0; index < inner.size();) {
    const Repeat& repeat = inner[index];
    std::vector<Repeat> deeper;
    std::size_t next = index + 1;
    for (; next < inner.size() && repeat.reach().contains(inner[next].reach()); ++next) {
      deeper.push_back(inner[next]);
    }
    if (bar < repeat.bars.first) order.push_back({bar, repeat.bars.first - 1});
    const std::vector<BarRange> body = played(repeat.body(), repeats_in(repeat.body(), deeper));
    std::vector<std::vector<BarRange>> endings;
    for (const Ending& ending : repeat.endings)
      endings.push_back(played(ending.bars, repeats_in(ending.bars, deeper)));
    for (int time = 1; time <= repeat.times; ++time) {
      order.insert(order.end(), body.begin(), body.end());
      for (std::size_t at = 0; at < endings.size(); ++at)
        if (std::ranges::find(repeat.endings[at].times, time) != repeat.endings[at].times.end())
          order.insert(order.end(), endings[at].begin(), endings[at].end());
    }
    bar = repeat.reach().last + 1;
    index = next;
  }
  if (bar <= stretch.last) order.push_back({bar, stretch.last});
  return order;
}

}  // namespace

bool Repeat::goes_back_from(int bar) const {
  if (endings.empty()) return bar == bars.last;
  return std::ranges::any_of(endings, [&](const Ending& ending) {
    return ending.bars.last == bar && ending.times.front() < times;
  });
}

Meter Piece::meter_at(int bar) const {
  return *latest(changes, bar, &Change::meter, std::optional<Meter>(meter));
}

std::optional<Key> Piece::key_at(int bar) const { return latest(changes, bar, &Change::key, key); }

std::optional<Tempo> Piece::tempo_at(int bar) const {
  return latest(changes, bar, &Change::tempo, tempo);
}

double Piece::quarters_in(int bar) const {
  return bar == 0 ? pickup * 4.0 / meter.unit : meter_at(bar).quarters();
}

int Piece::level_at(int bar) const { return hardest_level({bar, bar}); }

std::string Piece::in_force_at(int bar) const {
  const Mark* found = nullptr;
  for (const Mark& mark : marks)
    if (mark.holds && mark.bar <= std::max(1, bar) && (found == nullptr || mark.bar >= found->bar))
      found = &mark;
  return found == nullptr ? std::string() : found->note;
}

int Piece::hardest_level(BarRange among) const {
  std::vector<const HardBars*> near;
  for (const HardBars& each : hard)
    if (each.bars.overlaps(among)) near.push_back(&each);
  int hardest = 1;
  for (int bar = among.first; bar <= among.last; ++bar) {
    std::optional<int> marked;
    for (const HardBars* each : near)
      if (each->bars.contains(bar)) marked = std::max(marked.value_or(1), each->level);
    const Section* section = marked ? nullptr : section_of(sections, bar);
    hardest = std::max(hardest, marked                      ? *marked
                                : section && section->level ? *section->level
                                                            : level);
  }
  return hardest;
}

const Parting* Piece::parting_of(int one, int other) const {
  for (const Parting& parting : partings)
    if (parting.one == one && parting.other == other) return &parting;
  return nullptr;
}

std::vector<std::string> Piece::beginning_aloud_at(int bar) const {
  const auto at = static_cast<std::size_t>(bar);
  return at < beginnings_aloud.size() ? beginnings_aloud[at] : std::vector<std::string>();
}

std::string Piece::beginning_at(int bar) const {
  const auto at = static_cast<std::size_t>(bar);
  return at < beginnings.size() ? beginnings[at] : std::string();
}

std::string Piece::said_at(int bar, std::size_t part) const {
  const auto at = static_cast<std::size_t>(bar);
  return at < said.size() && part < said[at].size() ? said[at][part] : std::string();
}

int Piece::learned_bar(int bar) const {
  // A chain can visit every bar once at most; a longer one would be a circle, which reading
  // refuses.
  for (int hop = 0; hop <= bars; ++hop) {
    const Section* section = section_of(sections, bar);
    if (!section || !section->same_as) return bar;
    bar = section->same_as->first + (bar - section->bars.first);
  }
  return bar;
}

std::vector<int> Piece::learned_bars() const {
  constexpr int kUnknown = -1, kOnTheWay = -2;
  std::vector<int> learned(static_cast<std::size_t>(bars) + 1, kUnknown);
  std::vector<int> way;
  for (int start = 0; start <= bars; ++start) {
    int bar = start;
    int end = kUnknown;
    while (end == kUnknown) {
      if (bar < 0 || bar > bars || learned[bar] == kOnTheWay) {
        end = learned_bar(bar);  // what reading refuses: outside the piece, or a circle
      } else if (learned[bar] != kUnknown) {
        end = learned[bar];
      } else {
        way.push_back(bar);
        learned[bar] = kOnTheWay;
        const Section* section = section_of(sections, bar);
        if (!section || !section->same_as)
          end = bar;
        else
          bar = section->same_as->first + (bar - section->bars.first);
      }
    }
    for (const int each : way) learned[each] = end;
    way.clear();
  }
  return learned;
}

std::vector<BarRange> Piece::playing_order() const {
  std::vector<Repeat> ordered = repeats;
  std::sort(ordered.begin(), ordered.end(), [](const Repeat& one, const Repeat& other) {
    return one.bars.first != other.bars.first ? one.bars.first < other.bars.first
                                              : one.reach().last > other.reach().last;
  });
  return played(whole(), ordered);
}

}  // namespace cahier
