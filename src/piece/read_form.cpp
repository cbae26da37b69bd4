#include "piece/read_form.h"

#include <fmt/core.h>

#include <algorithm>
#include <unordered_map>

#include "text/limits.h"

namespace cahier {
namespace {

constexpr std::size_t kLongestNote = 200;

std::vector<BarRange> read_passages(YamlFields& fields, const Extent& extent,
                                    std::vector<Place>& places) {
  std::vector<BarRange> passages;
  const auto items = fields.list("bars");
  if (fields.lacks("bars")) fields.missing("bars", "write for example bars: [9-16, 41-48]");
  for (const YamlNode* item : items) {
    const auto bars =
        read_bars(fields.source(), *item, "the bars of a look-alike", extent, fields.diagnostics());
    if (!bars) continue;
    passages.push_back(*bars);
    places.push_back(item->at);
  }
  if (!fields.lacks("bars") && fields.is_map() && items.size() == 1) {
    fields.diagnostics().error(fields.source(), items.front()->at,
                               "look-alikes need at least two passages, found one",
                               "write for example bars: [9-16, 41-48]");
    return {};
  }
  return passages.size() == items.size() ? passages : std::vector<BarRange>{};
}

std::vector<int> read_forks(YamlFields& fields, const Extent& extent) {
  std::vector<int> forks;
  const auto items = fields.list("fork");
  if (fields.lacks("fork")) {
    fields.missing("fork", "name the bar where each passage parts from the other: fork: [13, 45]");
  }
  for (const YamlNode* item : items) {
    const auto bar = read_bar(fields.source(), *item, "a fork", extent, fields.diagnostics());
    if (bar) forks.push_back(*bar);
  }
  return forks.size() == items.size() ? forks : std::vector<int>{};
}

std::optional<LookAlikes> read_look_alike(YamlFields& fields, const Extent& extent) {
  Diagnostics& diagnostics = fields.diagnostics();
  const Source& source = fields.source();
  std::vector<Place> places;
  const auto passages = read_passages(fields, extent, places);
  const auto forks = read_forks(fields, extent);
  fields.refuse_unknown();
  if (passages.empty() || forks.empty()) return std::nullopt;
  const Place fork_at = fields.node("fork")->at;
  if (passages.size() != forks.size()) {
    diagnostics.error(source, fork_at,
                      fmt::format("{} passages look alike, but the number of forks is {}",
                                  passages.size(), forks.size()),
                      "give one fork for each passage, in the same order");
    return std::nullopt;
  }
  bool sound = true;
  std::vector<std::size_t> order(passages.size());
  for (std::size_t index = 0; index < order.size(); ++index) {
    order[index] = index;
    if (passages[index].contains(forks[index])) continue;
    diagnostics.error(source, fork_at,
                      fmt::format("the fork at bar {} does not lie in its passage, bars {}",
                                  forks[index], bars_text(passages[index])),
                      "a fork is the bar of the passage where it parts from the other");
    sound = false;
  }
  std::sort(order.begin(), order.end(),
            [&](std::size_t one, std::size_t other) { return passages[one] < passages[other]; });
  LookAlikes look_alikes;
  for (const std::size_t index : order) {
    const BarRange& bars = passages[index];
    if (!look_alikes.passages.empty() && look_alikes.passages.back().overlaps(bars)) {
      diagnostics.error(source, places[index],
                        fmt::format("the passages {} and {} overlap",
                                    bars_text(look_alikes.passages.back()), bars_text(bars)),
                        "look-alikes are passages in different places");
      sound = false;
    }
    look_alikes.passages.push_back(bars);
    look_alikes.forks.push_back(forks[index]);
  }
  if (!sound) return std::nullopt;
  const int distance = look_alikes.forks[0] - look_alikes.passages[0].first;
  for (std::size_t index = 1; index < order.size(); ++index) {
    if (look_alikes.forks[index] - look_alikes.passages[index].first == distance) continue;
    diagnostics.warning(source, fork_at, "the forks are not equally far into their passages",
                        "passages that begin alike part after the same number of bars; is one of "
                        "the bar numbers wrong?");
    break;
  }
  return look_alikes;
}

}  // namespace

std::vector<HardBars> read_hard(YamlFields& fields, const Extent& extent) {
  std::vector<HardBars> all;
  for (const YamlNode* item : fields.list("hard")) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"hard\"");
    YamlFields inner(fields.source(), *item, fields.diagnostics());
    const auto bars = require_bars(inner, "bars", extent);
    const auto level = inner.whole("level", 1, 5);
    if (inner.lacks("level")) inner.missing("level", "1 is easy, 5 very hard: level: 5");
    inner.refuse_unknown();
    if (bars && level) all.push_back({*bars, *level});
    if (all.size() <= kMostHardPlaces) continue;
    fields.diagnostics().error(fields.source(), item->at,
                               fmt::format("more than {} hard places", kMostHardPlaces),
                               "give the sections levels, and name only what is harder");
    return {};
  }
  return all;
}

std::vector<LookAlikes> read_look_alikes(YamlFields& fields, const Extent& extent) {
  std::vector<LookAlikes> all;
  std::size_t forks = 0;
  std::size_t bars = 0;
  for (const YamlNode* item : fields.list("look-alikes")) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"look-alikes\"");
    YamlFields inner(fields.source(), *item, fields.diagnostics());
    const auto look_alikes = read_look_alike(inner, extent);
    if (!look_alikes) continue;
    forks += look_alikes->forks.size();
    for (const BarRange& each : look_alikes->passages)
      bars += static_cast<std::size_t>(each.size());
    if (forks > kMostForks || bars > kMostAlikeBars) {
      fields.diagnostics().error(
          fields.source(), item->at,
          forks > kMostForks
              ? fmt::format("more than {} forks of look-alikes", kMostForks)
              : fmt::format("the look-alikes have more than {} bars, added up", kMostAlikeBars),
          "name the ones that are confused most, and of each only the bars around its fork");
      return {};
    }
    all.push_back(*look_alikes);
  }
  return all;
}

std::vector<Mark> read_marks(YamlFields& fields, const Extent& extent) {
  std::vector<Mark> all;
  for (const YamlNode* item : fields.list("marks")) {
    const Diagnostics::Within link(fields.diagnostics(), "while reading \"marks\"");
    YamlFields inner(fields.source(), *item, fields.diagnostics());
    const auto bar = require_bar(inner, "bar", extent);
    const auto note = inner.text("note", kLongestNote);
    if (inner.lacks("note")) inner.missing("note", "say what to remember: note: \"new manual\"");
    const bool holds = inner.yes_no("holds").value_or(false);
    inner.refuse_unknown();
    if (bar && note) all.push_back({*bar, *note, holds});
  }
  return all;
}

std::vector<int> read_cues(YamlFields& fields, const Extent& extent) {
  std::vector<int> all;
  std::unordered_map<int, int> lines;
  for (const YamlNode* item : fields.list("cues")) {
    const auto bar = read_bar(fields.source(), *item, "a cue", extent, fields.diagnostics());
    if (!bar) continue;
    if (!lines.emplace(*bar, item->at.line).second) {
      fields.diagnostics().error(fields.source(), item->at,
                                 fmt::format("the cue at bar {} is given twice", *bar),
                                 "keep one of the two");
      continue;
    }
    all.push_back(*bar);
  }
  return all;
}

}  // namespace cahier
