// Figure 10: cue starts, rejoin points, passes and long recalls begin where phrases begin. It holds
// always.
//
// Choices: where a section names no phrases nothing is known of the inside of it, and starts there
// count neither way. A recall is long from 8 bars on, as a section is that is to be played whole. A
// start is just before a fork when it is on it or at most a chunk's length before, inside the
// passage; no rejoin point is there, and none anywhere in named look-alikes before their fork. A
// start takes its upbeat along in the player's hands: the plan has no field for it.
#include <algorithm>
#include <map>

#include "plan/phrase_map.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

class Starts {
 public:
  explicit Starts(const PlacedPiece& piece) : piece_(piece), phrases_(*piece.planned) {}

  void add(Lack lack, int bar) {
    if (phrases_.begins(bar) || may_be_inside(bar)) {
      ++all_;
      return;
    }
    if (!phrases_.is_known(bar)) return;
    ++all_;
    ++wrong_;
    inside_[lack].push_back(bar);
  }

  // Bar 0 and bar 1 as two starts of their own, which nobody asked for.
  void add_pickup(const std::vector<CueStart>& cues) {
    const auto is_cue = [&](int bar) {
      return std::ranges::any_of(cues, [&](const CueStart& cue) { return cue.bar == bar; });
    };
    const auto& sections = piece_.planned->sections;
    const bool section_at_1 = std::ranges::any_of(
        sections, [](const PlannedSection& section) { return section.bars.first == 1; });
    if (!is_cue(0) || !is_cue(1) || section_at_1 || may_be_inside(1)) return;
    ++wrong_;
    pickup_twice_ = true;
  }

  void measure(FigureBuilder& figure) {
    if (figure.all_of(all_ - wrong_, all_)) return;
    for (auto& [lack, inside] : inside_) {
      std::ranges::sort(inside);
      inside.erase(std::unique(inside.begin(), inside.end()), inside.end());
      std::vector<BarRange> bars;
      for (const int bar : inside) bars.push_back({bar, bar});
      figure.lacks({.lack = lack, .piece = piece_.index, .bars = std::move(bars)});
    }
    if (pickup_twice_) figure.lacks({.lack = Lack::pickup_twice, .piece = piece_.index});
  }

  // Nor inside what begins alike, just before it parts.
  void add_rejoin(int bar) {
    const bool into_fork = std::ranges::any_of(piece_.planned->forks, [&](const Fork& fork) {
      if (fork.from == ForkFrom::look_alikes)
        return is_before(fork, bar, piece_.planned->piece.bars);
      return fork.from == ForkFrom::return_ && is_before(fork, bar);
    });
    if (!into_fork) return add(Lack::rejoin_inside_phrase, bar);
    ++all_;
    ++wrong_;
    inside_[Lack::rejoin_before_fork].push_back(bar);
  }

 private:
  bool is_before(const Fork& fork, int bar) const {
    return is_before(fork, bar, piece_.plan->method.chunk_most);
  }
  static bool is_before(const Fork& fork, int bar, int most_bars) {
    return std::ranges::any_of(fork.ways, [&](const WayOn& way) {
      return way.alike.contains(bar) && bar <= way.at && bar != way.to &&
             way.at + 1 - bar <= most_bars;
    });
  }

  bool is_at_fork(int bar) const {
    return std::ranges::any_of(piece_.planned->forks, [&](const Fork& fork) {
      return is_before(fork, bar) ||
             std::ranges::any_of(fork.back,
                                 [&](const WayOn& way) {
                                   return way.alike.contains(bar) &&
                                          way.at - bar < piece_.plan->method.chunk_most;
                                 }) ||
             std::ranges::find(fork.ways, bar, &WayOn::to) != fork.ways.end();
    });
  }

  bool may_be_inside(int bar) const {
    const auto& cues = piece_.planned->piece.cues;
    if (std::ranges::find(cues, bar) != cues.end()) return true;
    if (is_at_fork(bar)) return true;
    const int chunk = piece_.chunk_at[bar];
    return chunk >= 0 && piece_.planned->chunks[chunk].slips.slips > 0;
  }

  const PlacedPiece& piece_;
  PhraseMap phrases_;
  int all_ = 0;
  int wrong_ = 0;
  std::map<Lack, std::vector<int>> inside_;
  bool pickup_twice_ = false;
};

}  // namespace

Figure phrases(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::phrases);
  for (const PlacedPiece& piece : placed.pieces) {
    Starts starts(piece);
    for (const CueStart& cue : piece.planned->cues) starts.add(Lack::cue_inside_phrase, cue.bar);
    starts.add_pickup(piece.planned->cues);
    for (const int bar : piece.planned->rejoin) starts.add_rejoin(bar);
    for (const PlacedTask& placed_task : piece.tasks) {
      const Task& task = *placed_task.task;
      if (placed_task.past) continue;
      if (is_pass(task.drill)) starts.add(Lack::pass_inside_phrase, task.bars.first);
      if (task.drill == Drill::recall && counted_bars(task.bars) >= numbers::kLeastWholeBars)
        starts.add(Lack::recall_inside_phrase, task.bars.first);
    }
    starts.measure(figure);
  }
  return figure.take();
}

}  // namespace cahier::figures
