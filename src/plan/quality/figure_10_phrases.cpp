// Figure 10: cue starts, passes and long recalls begin where phrases begin. It holds always.
//
// Choices: where a section names no phrases nothing is known of the inside of it, and starts there
// count neither way. A recall is long from 8 bars on, as a section is that is to be played whole. A
// start is just before a fork when it is on it or at most a chunk's length before, inside the
// passage. A start takes its upbeat along in the player's hands: the plan has no field for it.
#include <algorithm>

#include "plan/phrase_map.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/fork_places.h"

namespace cahier::figures {
namespace {

constexpr int kLongRecall = 8;

class Starts {
 public:
  explicit Starts(const PlacedPiece& piece)
      : piece_(piece), phrases_(*piece.planned), forks_(fork_places(*piece.planned)) {}

  void add(Lack lack, int bar) {
    if (phrases_.begins(bar) || may_be_inside(bar)) {
      ++all_;
      return;
    }
    if (!phrases_.is_known(bar)) return;
    ++all_;
    ++wrong_;
    auto& bars = inside_[lack == Lack::cue_inside_phrase    ? 0
                         : lack == Lack::pass_inside_phrase ? 1
                                                            : 2];
    bars.push_back(bar);
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
    constexpr Lack kLacks[] = {Lack::cue_inside_phrase, Lack::pass_inside_phrase,
                               Lack::recall_inside_phrase};
    for (std::size_t at = 0; at < std::size(kLacks); ++at) {
      std::ranges::sort(inside_[at]);
      inside_[at].erase(std::unique(inside_[at].begin(), inside_[at].end()), inside_[at].end());
      std::vector<BarRange> bars;
      for (const int bar : inside_[at]) bars.push_back({bar, bar});
      if (!bars.empty())
        figure.lacks({.lack = kLacks[at], .piece = piece_.index, .bars = std::move(bars)});
    }
    if (pickup_twice_) figure.lacks({.lack = Lack::pickup_twice, .piece = piece_.index});
  }

 private:
  bool may_be_inside(int bar) const {
    const auto& cues = piece_.planned->piece.cues;
    if (std::ranges::find(cues, bar) != cues.end()) return true;
    for (const ForkPlaces& fork : forks_)
      for (const ForkPlaces::Way& way : fork.ways)
        if (way.passage.contains(bar) && bar <= way.at &&
            bar >= way.at - piece_.plan->method.chunk_most)
          return true;
    const int chunk = piece_.chunk_at[bar];
    return chunk >= 0 && piece_.planned->chunks[chunk].slips.slips > 0;
  }

  const PlacedPiece& piece_;
  PhraseMap phrases_;
  std::vector<ForkPlaces> forks_;
  int all_ = 0;
  int wrong_ = 0;
  std::vector<int> inside_[3];  // of cue starts, passes, recalls
  bool pickup_twice_ = false;
};

}  // namespace

Figure phrases(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::phrases);
  for (const PlacedPiece& piece : placed.pieces) {
    Starts starts(piece);
    for (const CueStart& cue : piece.planned->cues) starts.add(Lack::cue_inside_phrase, cue.bar);
    starts.add_pickup(piece.planned->cues);
    for (const PlacedTask& placed_task : piece.tasks) {
      const Task& task = *placed_task.task;
      if (placed_task.past) continue;
      if (is_pass(task.drill)) starts.add(Lack::pass_inside_phrase, task.bars.first);
      if (task.drill == Drill::recall && counted_bars(task.bars) >= kLongRecall)
        starts.add(Lack::recall_inside_phrase, task.bars.first);
    }
    starts.measure(figure);
  }
  return figure.take();
}

}  // namespace cahier::figures
