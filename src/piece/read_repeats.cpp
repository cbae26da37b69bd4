#include "piece/read_repeats.h"

#include <fmt/core.h>

#include <algorithm>
#include <utility>

#include "piece/written_repeat.h"
#include "text/limits.h"

namespace cahier {
namespace {

constexpr int kMostTimes = 99;

// By first bar, the outer before the inner.
bool outer_first(const WrittenRepeat& one, const WrittenRepeat& other) {
  const BarRange& left = one.repeat.bars;
  const BarRange& right = other.repeat.bars;
  return left.first != right.first ? left.first < right.first : left.last > right.last;
}

// REQUIRES: `ordered` by outer_first.
bool nests(const Source& source, const std::vector<WrittenRepeat>& ordered,
           Diagnostics& diagnostics) {
  bool sound = true;
  std::vector<BarRange> open;
  for (const WrittenRepeat& each : ordered) {
    const BarRange& bars = each.repeat.bars;
    while (!open.empty() && open.back().last < bars.first) open.pop_back();
    if (!open.empty() && (!open.back().contains(bars) || open.back() == bars)) {
      const bool same = open.back() == bars;
      diagnostics.error(source, each.at,
                        same ? fmt::format("the repeat of bars {} is given twice", bars_text(bars))
                             : fmt::format("the repeats of bars {} and {} cross",
                                           bars_text(open.back()), bars_text(bars)),
                        same ? "keep one of them, with as many \"times\" as it is played"
                             : "a repeat may lie inside another or outside it, not partly in it");
      sound = false;
      continue;
    }
    open.push_back(bars);
  }
  return sound;
}

// REQUIRES: the repeats and endings nest.
double bars_as_played(const std::vector<WrittenRepeat>& repeats, const Extent& extent) {
  struct Stretch {
    BarRange bars;
    double times = 1;
  };
  std::vector<Stretch> stretches;
  for (const WrittenRepeat& each : repeats) {
    stretches.push_back({each.repeat.body(), static_cast<double>(each.repeat.times)});
    for (const Ending& ending : each.repeat.endings)
      stretches.push_back({ending.bars, static_cast<double>(ending.times.size())});
  }
  std::stable_sort(stretches.begin(), stretches.end(), [](const Stretch& a, const Stretch& b) {
    return a.bars.first != b.bars.first ? a.bars.first < b.bars.first : a.bars.last > b.bars.last;
  });
  double total = 0;
  std::vector<std::pair<int, double>> open;  // last bar, and how often a bar in it is played
  std::size_t next = 0;
  for (int bar = extent.first; bar <= extent.last && total <= kMostPlayedBars; ++bar) {
    while (!open.empty() && open.back().first < bar) open.pop_back();
    for (; next < stretches.size() && stretches[next].bars.first == bar; ++next)
      open.emplace_back(stretches[next].bars.last,
                        (open.empty() ? 1 : open.back().second) * stretches[next].times);
    total += open.empty() ? 1 : open.back().second;
  }
  return total;
}

}  // namespace

std::vector<Repeat> read_repeats(YamlFields& fields, const Extent& extent) {
  std::vector<WrittenRepeat> written;
  const auto items = fields.list("repeats");
  for (const YamlNode* item : items) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"repeats\"");
    YamlFields inner(fields.source(), *item, fields.diagnostics());
    const auto bars = require_bars(inner, "bars", extent);
    const auto times = inner.whole("times", 2, kMostTimes);
    if (inner.lacks("times")) {
      inner.missing("times", "count the first time too: a plain repeat is times: 2");
    }
    inner.refuse_unknown();
    if (bars && times) written.push_back({{*bars, *times}, item->at});
  }
  std::stable_sort(written.begin(), written.end(), outer_first);
  const bool sound =
      nests(fields.source(), written, fields.diagnostics()) && written.size() == items.size();
  if (!read_endings(fields, extent, written, sound) || !sound) return {};
  if (!written.empty() && extent.last > 0 && bars_as_played(written, extent) > kMostPlayedBars) {
    fields.diagnostics().error(
        fields.source(), fields.node("repeats")->at,
        fmt::format("with these repeats more than {} bars are played", kMostPlayedBars),
        "lower \"times\", or remove repeats that are inside one another");
    return {};
  }
  std::vector<Repeat> all;
  for (WrittenRepeat& each : written) all.push_back(std::move(each.repeat));
  return all;
}

}  // namespace cahier
