// Figure 7: every bar lies in a slow and in a counted pass, where there is time in two of each.
//
// A pass counts for the bars where it stands, so those of a return have passes of their own.
#include <algorithm>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/mend.h"
#include "plan/quality/missing.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

// By bar, how many passes of a drill it lies in.
std::vector<int> count_passes(const PlacedPiece& piece, Drill drill) {
  std::vector<int> passes(static_cast<std::size_t>(piece.planned->piece.bars) + 1, 0);
  for (const PlacedTask& placed : piece.tasks)
    if (placed.task->drill == drill)
      for (int bar = placed.task->bars.first; bar <= placed.task->bars.last; ++bar) ++passes[bar];
  return passes;
}

int passes_wanted(const PlacedPiece& piece) {
  return piece.leaves(piece.method().second_pass_days) ? piece.method().passes : 1;
}

DateSpan window_of(const PlacedPiece& piece) {
  return {*piece.last_new + days{1}, piece.plan->by - days{1}};
}

void say_lack(FigureBuilder& figure, const PlacedPiece& piece, Drill drill, Lack lack,
              const std::vector<int>& bars) {
  if (bars.empty()) return;
  std::vector<BarRange> ranges = as_ranges(bars);
  const Plan& plan = *piece.plan;
  BarRange one = ranges.front();
  one.last = std::min(one.last, one.first + plan.method.stretch_bars - 1);
  figure.lacks(with_mend({.lack = lack, .piece = piece.index, .bars = std::move(ranges)}, plan,
                         window_of(piece), piece.time.minutes(drill, one, 2)));
}

}  // namespace

std::vector<Missing> missing_passes(const PlacedPiece& piece) {
  if (!piece.leaves(numbers::kDaysLeft)) return {};
  const std::vector<int> slow = count_passes(piece, Drill::slow_pass);
  const std::vector<int> counted = count_passes(piece, Drill::counted_pass);
  std::vector<int> bars;
  for (int bar = piece.planned->piece.first_bar(); bar <= piece.planned->piece.bars; ++bar)
    if (std::min(slow[bar], counted[bar]) < passes_wanted(piece)) bars.push_back(bar);
  std::vector<Missing> missing;
  for (const BarRange& range : as_ranges(bars)) missing.push_back({range, window_of(piece)});
  return missing;
}

Figure passes(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::passes);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    const int bars = piece.planned->piece.whole().size();
    int short_of = 0;
    for (const Missing& missing : missing_passes(piece)) short_of += missing.bars.size();
    figure.all_of(bars - short_of, bars);
    for (const Drill drill : {Drill::slow_pass, Drill::counted_pass}) {
      const bool slow = drill == Drill::slow_pass;
      const std::vector<int> passes = count_passes(piece, drill);
      std::vector<int> none;
      std::vector<int> one;
      for (int bar = piece.planned->piece.first_bar(); bar <= piece.planned->piece.bars; ++bar) {
        if (passes[bar] == 0) none.push_back(bar);
        if (passes[bar] > 0 && passes[bar] < passes_wanted(piece)) one.push_back(bar);
      }
      say_lack(figure, piece, drill, slow ? Lack::no_slow_pass : Lack::no_counted_pass, none);
      say_lack(figure, piece, drill, slow ? Lack::one_slow_pass : Lack::one_counted_pass, one);
    }
  }
  return figure.take();
}

}  // namespace cahier::figures
