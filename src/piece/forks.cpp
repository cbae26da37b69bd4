#include "piece/forks.h"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

namespace cahier {
namespace {

constexpr int kMostAlike = 16;  // bars before a fork that are worth naming
constexpr int kEnd = 0;         // in place of the bar after the last one played

class ForkFinder {
 public:
  explicit ForkFinder(const Piece& piece) : piece_(piece), learned_(piece.learned_bars()) {
    const std::vector<BarRange> order = piece.playing_order();
    for (std::size_t at = 0; at < order.size(); ++at)
      next_[order[at].last].push_back(at + 1 < order.size() ? order[at + 1].first : kEnd);
  }

  std::vector<Fork> find() {
    find_jumps();
    find_returns();
    std::erase_if(found_, [this](const Fork& fork) { return is_named(fork); });
    std::ranges::stable_sort(found_, {}, [](const Fork& fork) { return fork.ways.front().at; });
    std::size_t ways = 0;
    std::vector<Fork> kept;
    for (Fork& fork : found_)
      if ((ways += fork.ways.size()) <= kMostFoundWays) kept.push_back(std::move(fork));
    return kept;
  }

 private:
  // Repeats and endings: every bar after which the piece goes on in several ways, or back.
  void find_jumps() {
    for (const auto& [at, next] : next_) {
      const std::set<int> ways(next.begin(), next.end());
      const bool goes_back = *ways.rbegin() != kEnd && *ways.begin() != at + 1;
      if (ways.size() == 1 && (!goes_back || ends_an_ending(at))) continue;
      Fork fork{ForkFrom::repeat, {}};
      for (const int to : next)
        if (to != kEnd && !has_way(fork, to)) fork.ways.push_back(way(at, to));
      if (const Repeat* repeat = parts_into_endings(at)) {
        fork.from = ForkFrom::ending;
        for (const Ending& ending : repeat->endings) add_way_back(fork, ending.bars.last);
      }
      if (!fork.ways.empty()) found_.push_back(std::move(fork));
    }
  }

  static bool has_way(const Fork& fork, int to) {
    return std::ranges::find(fork.ways, to, &WayOn::to) != fork.ways.end();
  }

  const Repeat* parts_into_endings(int at) const {
    for (const Repeat& repeat : piece_.repeats)
      if (!repeat.endings.empty() && repeat.body().last == at) return &repeat;
    return nullptr;
  }

  bool ends_an_ending(int at) const {
    return std::ranges::any_of(piece_.repeats, [&](const Repeat& repeat) {
      return std::ranges::any_of(repeat.endings,
                                 [&](const Ending& ending) { return ending.bars.last == at; });
    });
  }

  // From an ending that goes nowhere but back.
  void add_way_back(Fork& fork, int at) const {
    const auto next = next_.find(at);
    if (next == next_.end()) return;
    const int to = next->second.front();
    const bool always = std::ranges::count(next->second, to) == std::ssize(next->second);
    if (always && to != kEnd && to <= at) fork.back.push_back(way(at, to));
  }

  WayOn way(int at, int to) const {
    WayOn on{{lead_in(at), at}, at, to};
    const std::vector<int>& next = next_.at(at);
    on.of = static_cast<int>(next.size());
    for (int time = 0; time < on.of; ++time)
      if (next[time] == to) on.times.push_back(time + 1);
    return on;
  }

  bool is_played(int bar, int next) const {
    const auto jumps = next_.find(bar);
    if (jumps == next_.end()) return next == bar + 1;
    return std::ranges::find(jumps->second, next) != jumps->second.end();
  }

  // The first of the bars that are played one after another up to this one.
  int lead_in(int at) const {
    int first = at;
    while (first > piece_.first_bar() && at - first + 1 < kMostAlike && is_played(first - 1, first))
      --first;
    return first;
  }

  // How a bar is left at last.
  int exit_of(int bar) const {
    const auto jumps = next_.find(bar);
    return jumps == next_.end() ? bar + 1 : jumps->second.back();
  }

  void find_returns() {
    std::map<int, std::vector<int>> places;  // by learned bar: the ends of returns
    for (const Section& section : piece_.sections)
      if (section.same_as) places[learned_[section.bars.last]];
    if (places.empty()) return;
    for (int bar = piece_.first_bar(); bar <= piece_.bars; ++bar)
      if (const auto place = places.find(learned_[bar]); place != places.end())
        place->second.push_back(bar);
    for (const auto& [learned, bars] : places) {
      Fork fork{ForkFrom::return_, {}};
      std::set<int> ways;  // by learned bar
      for (const int at : bars)
        if (const int to = exit_of(at); to != kEnd && ways.insert(learned_[to]).second)
          fork.ways.push_back({{at, at}, at, to});
      if (fork.ways.size() < 2) continue;
      const int alike = bars_alike(fork);
      for (WayOn& way : fork.ways) way.alike.first = way.at - alike + 1;
      found_.push_back(std::move(fork));
    }
  }

  int bars_alike(const Fork& fork) const {
    const int first = fork.ways.front().at;
    for (int alike = 1; alike < kMostAlike; ++alike)
      for (const WayOn& way : fork.ways)
        if (way.at - alike < piece_.first_bar() || first - alike < piece_.first_bar() ||
            learned_[way.at - alike] != learned_[first - alike] ||
            !is_played(way.at - alike, way.at - alike + 1))
          return alike;
    return kMostAlike;
  }

  // Whether look-alikes of the piece file part the same ways.
  bool is_named(const Fork& fork) const {
    if (fork.from != ForkFrom::return_) return false;
    return std::ranges::any_of(piece_.look_alikes, [&](const LookAlikes& group) {
      return std::ranges::all_of(fork.ways, [&](const WayOn& way) {
        return std::ranges::find(group.forks, way.to) != group.forks.end();
      });
    });
  }

  const Piece& piece_;
  std::vector<int> learned_;
  // After the last bar of each stretch: what is played next, time after time.
  std::map<int, std::vector<int>> next_;
  std::vector<Fork> found_;
};

}  // namespace

std::string_view fork_word(ForkFrom from) {
  switch (from) {
    case ForkFrom::look_alikes:
      return "look_alikes";
    case ForkFrom::return_:
      return "return";
    case ForkFrom::repeat:
      return "repeat";
    case ForkFrom::ending:
      return "ending";
  }
  return "look_alikes";
}

std::vector<Fork> forks_of(const Piece& piece) {
  std::vector<Fork> forks;
  for (const LookAlikes& group : piece.look_alikes) {
    Fork fork;
    for (std::size_t at = 0; at < group.passages.size(); ++at)
      fork.ways.push_back({group.passages[at],
                           std::max(group.passages[at].first, group.forks[at] - 1),
                           group.forks[at]});
    forks.push_back(std::move(fork));
  }
  for (Fork& fork : ForkFinder(piece).find()) forks.push_back(std::move(fork));
  return forks;
}

}  // namespace cahier
