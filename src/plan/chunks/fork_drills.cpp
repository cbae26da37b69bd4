#include "plan/chunks/fork_drills.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "plan/cue_reach.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// Where to begin so as to play into a fork: at most the fork's own chunk before it, and in the
// look-alike bars where there are any before the fork.
int bar_before_fork(const Analysis& analysis, BarRange look_alike, int fork) {
  const Passage& holds = analysis.passages[analysis.passage_at(fork)];
  if (holds.bars.first < fork) return std::max(holds.bars.first, look_alike.first);
  if (fork == look_alike.first) return fork;
  const Passage& before = analysis.passages[analysis.passage_at(fork - 1)];
  return std::max({before.bars.first, look_alike.first, fork - holds.bars.size()});
}

class FoundFork {
 public:
  FoundFork(const Analysis& analysis, const Method& method, const Fork& fork)
      : analysis_(analysis), most_(method.chunk_most), fork_(fork) {
    starts_ = fork.ways;
    for (const WayOn& back : fork.back)
      if (!rides_along(back)) starts_.push_back(back);
  }

  void add_cues(std::set<int>& bars) const {
    for (const WayOn& way : starts_) {
      const BarRange before = before_fork(way);
      const auto is_among = [&](int goal) {
        return std::any_of(bars.lower_bound(before.first), bars.upper_bound(before.last),
                           [&](int bar) { return leads_to(bar, goal); });
      };
      for (const int goal : {goal_of(way), way.at}) {
        if (is_among(goal)) break;
        if (const auto bar = new_start(way, goal)) {
          bars.insert(*bar);
          break;
        }
      }
    }
  }

  // A few starts each, the ways back with those that lead to them.
  std::vector<ForkDrill> drills() const {
    const int count = static_cast<int>(starts_.size());
    const int turns = (count + numbers::kMostStartsOfADrill - 1) / numbers::kMostStartsOfADrill;
    std::vector<ForkDrill> drills;
    for (int turn = 0; turn < turns; ++turn) {
      ForkDrill drill;
      for (int at = count * turn / turns; at < count * (turn + 1) / turns; ++at)
        add_start(drill, starts_[at]);
      drill.bar = drill.ways.front().to;
      drills.push_back(std::move(drill));
    }
    return drills;
  }

 private:
  // Whether a way back comes so soon after the way into its ending that both are played in one go.
  bool rides_along(const WayOn& back) const {
    return std::ranges::any_of(fork_.ways, [&](const WayOn& way) { return leads_to(way, back); });
  }

  bool leads_to(const WayOn& way, const WayOn& back) const {
    return way.to <= back.at && back.at - way.to < most_;
  }

  BarRange before_fork(const WayOn& way) const {
    return {std::max(way.alike.first, way.at + 1 - most_), way.at};
  }

  bool leads_to(int bar, int goal) const { return analysis_.start_at(bar).bars.last >= goal; }

  // How far a start should go: past the fork where any way on there does so without a jump.
  int goal_of(const WayOn& way) const {
    return std::ranges::any_of(
               fork_.ways,
               [&](const WayOn& other) { return other.at == way.at && other.to == way.at + 1; })
               ? way.at + 1
               : way.at;
  }

  // Two bars before the fork, or as near to that as a start leads so far: from inside a chunk one
  // goes on to the end of the next.
  std::optional<int> new_start(const WayOn& way, int goal) const {
    for (const int before : {1, 0, 2, 3})
      if (const int bar = way.at - before; before_fork(way).contains(bar) && leads_to(bar, goal))
        return bar;
    return std::nullopt;
  }

  void add_start(ForkDrill& drill, const WayOn& way) const {
    const BarRange before = before_fork(way);
    const auto& cues = analysis_.planned.cues;
    auto cue = cues.end();
    for (const int goal : {goal_of(way), way.at})
      if (cue == cues.end())
        cue = std::ranges::find_if(cues, [&](const CueStart& one) {
          return before.contains(one.bar) && leads_to(one.bar, goal);
        });
    drill.cues.push_back(cue->number);
    add_way(drill, way, cue->bar, false);
    for (const WayOn& back : fork_.back)
      if (leads_to(way, back)) add_way(drill, back, way.to, true);
  }

  void add_way(ForkDrill& drill, const WayOn& way, int from, bool goes_on) const {
    drill.ways.push_back({way.at, way.to, goes_on});
    for (const BarRange played : {BarRange{from, way.at}, BarRange{way.to, way.to}})
      for (const int chunk : analysis_.chunks_touching(played)) drill.learned.push_back(chunk);
  }

  const Analysis& analysis_;
  int most_;  // bars of a chunk
  const Fork& fork_;
  std::vector<WayOn> starts_;  // ways that are begun for themselves
};

ForkDrill of_look_alikes(Analysis& analysis, const Fork& group) {
  ForkDrill drill;
  drill.required = true;
  drill.bar = group.ways.front().to;
  for (const WayOn& way : group.ways) {
    const CueStart& cue = *cue_before_fork(analysis.planned, way.alike, way.to);
    drill.cues.push_back(cue.number);
    drill.ways.push_back({way.at, way.to});
    // On to the end of the chunk that the fork stands in.
    StartFromCue& start = analysis.starts[cue.number - 1];
    const int end = analysis.passages[analysis.passage_at(way.to)].bars.last;
    start = analysis.start_over({start.bar, std::max(start.bars.last, end)});
    for (const int chunk : analysis.chunks_touching(way.alike)) drill.learned.push_back(chunk);
  }
  return drill;
}

}  // namespace

void add_cues_before_forks(const Analysis& analysis, const Method& method,
                           const std::vector<int>& numbered, std::set<int>& bars) {
  const auto is_led_into = [&](const WayOn& way) {
    return std::ranges::any_of(numbered, [&](int bar) {
      return way.alike.contains(bar) && bar < way.to && way.to - bar <= method.chunk_most;
    });
  };
  for (const Fork& fork : analysis.planned.forks)
    if (fork.from == ForkFrom::look_alikes)
      for (const WayOn& way : fork.ways)
        if (!is_led_into(way)) bars.insert(bar_before_fork(analysis, way.alike, way.to));
  for (const Fork& fork : analysis.planned.forks)
    if (fork.from != ForkFrom::look_alikes) FoundFork(analysis, method, fork).add_cues(bars);
}

void add_fork_drills(Analysis& analysis, const Method& method) {
  for (const Fork& fork : analysis.planned.forks) {
    if (fork.from == ForkFrom::look_alikes) {
      analysis.fork_drills.push_back(of_look_alikes(analysis, fork));
      continue;
    }
    for (ForkDrill& drill : FoundFork(analysis, method, fork).drills())
      analysis.fork_drills.push_back(std::move(drill));
  }
  for (ForkDrill& drill : analysis.fork_drills) {
    for (const int cue : drill.cues)
      for (const int chunk : analysis.starts[cue - 1].touched) drill.learned.push_back(chunk);
    std::ranges::sort(drill.learned);
    drill.learned.erase(std::unique(drill.learned.begin(), drill.learned.end()),
                        drill.learned.end());
  }
}

}  // namespace cahier
