#include <fmt/core.h>

#include <algorithm>
#include <optional>

#include "piece/written_repeat.h"

namespace cahier {
namespace {

struct WrittenEnding {
  Ending ending;
  Place bars_at;
  std::vector<Place> times_at;  // of each time
  std::size_t repeat = 0;       // that it belongs to

  const BarRange& bars() const { return ending.bars; }
};

class Endings {
 public:
  Endings(YamlFields& fields, const Extent& extent, std::vector<WrittenRepeat>& repeats)
      : fields_(fields), extent_(extent), repeats_(repeats) {}

  bool read(bool all_repeats_read) {
    const auto items = fields_.list("endings");
    for (const YamlNode* item : items) read_one(*item);
    if (endings_.size() != items.size()) return false;
    if (!all_repeats_read) return true;
    std::stable_sort(
        endings_.begin(), endings_.end(),
        [](const WrittenEnding& a, const WrittenEnding& b) { return a.bars() < b.bars(); });
    for (std::size_t at = 0; at < endings_.size() && sound_; ++at) give(at);
    for (std::size_t repeat = 0; repeat < repeats_.size() && sound_; ++repeat) check(repeat);
    for (std::size_t at = 0; at < endings_.size() && sound_; ++at) check_crossing(endings_[at]);
    return sound_;
  }

 private:
  void error(Place at, std::string what, std::string hint) {
    const Diagnostics::Within link(fields_.diagnostics(), "while reading \"endings\"");
    fields_.diagnostics().error(fields_.source(), at, std::move(what), std::move(hint));
    sound_ = false;
  }

  void read_one(const YamlNode& item) {
    const Diagnostics::Within link(fields_.diagnostics(), "while reading \"endings\"");
    YamlFields inner(fields_.source(), item, fields_.diagnostics());
    const auto bars = require_bars(inner, "bars", extent_);
    WrittenEnding written;
    const auto times = inner.list("times");
    for (const YamlNode* each : times)
      if (const auto time = read_time(*each)) {
        written.ending.times.push_back(*time);
        written.times_at.push_back(each->at);
      }
    if (inner.lacks("times"))
      inner.missing("times", "say at which times these bars are played: times: [1]");
    inner.refuse_unknown();
    if (!bars || times.empty() || written.times_at.size() != times.size()) return;
    written.ending.bars = *bars;
    written.bars_at = inner.node("bars")->at;
    endings_.push_back(std::move(written));
  }

  std::optional<int> read_time(const YamlNode& node) {
    constexpr int kMostTimes = 99;
    const auto time = yaml_whole(node);
    if (time && 1 <= *time && *time <= kMostTimes) return static_cast<int>(*time);
    fields_.diagnostics().error(
        fields_.source(), node.at,
        fmt::format("a time of an ending must be a whole number from 1 to {}", kMostTimes),
        "the first time is 1: times: [1]");
    return std::nullopt;
  }

  // The repeat that this ending follows and that still lacks one, else the innermost one that holds
  // it, else whichever it touches.
  std::optional<std::size_t> repeat_of(const WrittenEnding& ending) const {
    std::optional<std::size_t> lacking, around, touched;
    for (std::size_t at = 0; at < repeats_.size(); ++at) {
      const Repeat& repeat = repeats_[at].repeat;
      const bool follows = repeat.bars.last + 1 == ending.bars().first && !repeat.endings.empty();
      if (follows && lacks_a_time(repeat)) lacking = at;
      if (repeat.bars.contains(ending.bars())) around = at;
      if (follows || repeat.bars.overlaps(ending.bars())) touched = at;
    }
    return lacking ? lacking : around ? around : touched;
  }

  // Whether it has endings, but not for each of its times.
  static bool lacks_a_time(const Repeat& repeat) {
    std::size_t named = 0;
    for (const Ending& ending : repeat.endings) named += ending.times.size();
    return named > 0 && named < static_cast<std::size_t>(repeat.times);
  }

  void give(std::size_t at) {
    WrittenEnding& ending = endings_[at];
    const auto repeat = repeat_of(ending);
    if (!repeat)
      return error(
          ending.bars_at,
          fmt::format("the ending of bars {} is not in a repeat", bars_text(ending.bars())),
          "give its repeat as well: repeats: [{bars: 1-16, times: 2}]");
    ending.repeat = *repeat;
    std::vector<Ending>& endings = repeats_[*repeat].repeat.endings;
    if (!endings.empty() && endings.back().bars.overlaps(ending.bars()))
      return error(ending.bars_at,
                   fmt::format("the endings of bars {} and {} overlap",
                               bars_text(endings.back().bars), bars_text(ending.bars())),
                   "each bar lies in one ending");
    endings.push_back(ending.ending);
  }

  // Where they stand, and that each time has one.
  void check(std::size_t repeat_at) {
    Repeat& repeat = repeats_[repeat_at].repeat;
    if (repeat.endings.empty()) return;
    std::vector<const WrittenEnding*> own;
    for (const WrittenEnding& ending : endings_)
      if (ending.repeat == repeat_at) own.push_back(&ending);
    if (!check_places(repeat, own) || !check_times(repeat, own)) return;
    for (Ending& ending : repeat.endings) std::ranges::sort(ending.times);
  }

  bool check_places(const Repeat& repeat, const std::vector<const WrittenEnding*>& own) {
    const std::string of = bars_text(repeat.bars);
    if (own.front()->bars().first <= repeat.bars.first) {
      error(own.front()->bars_at,
            fmt::format("nothing of the repeat of bars {} stands before its ending of bars {}", of,
                        bars_text(own.front()->bars())),
            "an ending is the end of a repeat, after bars that are played every time");
      return false;
    }
    for (std::size_t at = 0; at < own.size(); ++at) {
      const bool is_last = at + 1 == own.size();
      const int next = is_last ? repeat.bars.last + 1 : own[at + 1]->bars().first;
      const bool follows = is_last && at > 0 && own[at]->bars().first == repeat.bars.last + 1;
      if (own[at]->bars().last + 1 == next || follows) continue;
      error(own[at]->bars_at,
            fmt::format("the ending of bars {} does not stand at the end of the repeat of bars {}",
                        bars_text(own[at]->bars()), of),
            "endings follow one another up to the repeat's last bar; the last one may come after "
            "it");
      return false;
    }
    return true;
  }

  bool check_times(const Repeat& repeat, const std::vector<const WrittenEnding*>& own) {
    const std::string of = bars_text(repeat.bars);
    std::vector<int> named;
    for (const WrittenEnding* ending : own)
      for (std::size_t at = 0; at < ending->times_at.size(); ++at) {
        const int time = ending->ending.times[at];
        if (time > repeat.times) {
          error(ending->times_at[at],
                fmt::format("the repeat of bars {} is played {} times, but this ending is for time "
                            "{}",
                            of, repeat.times, time),
                "correct the times here, or of the repeat");
          return false;
        }
        if (std::ranges::find(named, time) != named.end()) {
          error(ending->times_at[at],
                fmt::format("time {} of the repeat of bars {} has two endings", time, of),
                "name each time in one ending");
          return false;
        }
        named.push_back(time);
      }
    for (int time = 1; time <= repeat.times; ++time) {
      if (std::ranges::find(named, time) != named.end()) continue;
      error(own.back()->bars_at,
            fmt::format("time {} of the repeat of bars {} has no ending", time, of),
            "name each time in one ending: [{bars: 15-16, times: [1]}, {bars: 17-18, times: [2]}]");
      return false;
    }
    const WrittenEnding& last = *own.back();
    if (last.bars().first <= repeat.bars.last || last.ending.times == std::vector{repeat.times})
      return true;
    error(last.times_at.front(),
          fmt::format("the ending of bars {} comes after the repeat of bars {}, so it is for time "
                      "{} alone",
                      bars_text(last.bars()), of, repeat.times),
          "only the last time goes on past the repeat's last bar");
    return false;
  }

  // No other repeat begins or ends in the middle of an ending.
  void check_crossing(const WrittenEnding& ending) {
    for (std::size_t at = 0; at < repeats_.size(); ++at) {
      if (at == ending.repeat) continue;
      const BarRange other = repeats_[at].repeat.reach();
      const BarRange around = repeats_[ending.repeat].repeat.reach();
      if (!other.overlaps(around) || other.contains(around) || ending.bars().contains(other) ||
          (around.contains(other) && !other.overlaps(ending.bars())))
        continue;
      return error(ending.bars_at,
                   fmt::format("the ending of bars {} and the repeat of bars {} cross",
                               bars_text(ending.bars()), bars_text(repeats_[at].repeat.bars)),
                   "a repeat may lie inside an ending or outside it, not partly in it");
    }
  }

  YamlFields& fields_;
  const Extent& extent_;
  std::vector<WrittenRepeat>& repeats_;
  std::vector<WrittenEnding> endings_;
  bool sound_ = true;
};

}  // namespace

bool read_endings(YamlFields& fields, const Extent& extent, std::vector<WrittenRepeat>& repeats,
                  bool all_repeats_read) {
  return Endings(fields, extent, repeats).read(all_repeats_read);
}

}  // namespace cahier
