// Figure 5: sections are played whole from memory soon after they are learned, and each half of the
// piece before the first run-through.
//
// Choices: a section that comes back is learned where it is new, and asked for there alone. A
// stretch longer than 32 bars is whole where no more recalls and passes cover it than stretches of
// 32 bars would. What is played on the day of learning tests no memory: that takes a night. A piece
// has halves from 16 bars on, so that each has the 8 of a section; they meet where the section or
// phrase begins that is nearest to the middle.
#include <algorithm>
#include <cstdlib>

#include "plan/phrase_map.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/mend.h"
#include "plan/quality/missing.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

// Whether recalls and passes between two moments play `bars`, by few enough of them.
template <typename InTime>
bool played_whole(const PlacedPiece& piece, BarRange bars, InTime in_time) {
  std::vector<BarRange> played;
  for (const PlacedTask& placed : piece.tasks)
    if (plays_whole(placed.task->drill) && placed.task->bars.overlaps(bars) && in_time(placed))
      played.push_back(placed.task->bars);
  std::ranges::sort(played);
  const int at_a_time = piece.method().section_bars;
  const int most = (counted_bars(bars) + at_a_time - 1) / at_a_time;
  int reached = bars.first - 1;  // greedy: always the one that goes on farthest
  auto next = played.begin();
  for (int used = 0; used < most && reached < bars.last; ++used) {
    int farthest = reached;
    for (; next != played.end() && next->first <= reached + 1; ++next)
      farthest = std::max(farthest, next->last);
    reached = farthest;
  }
  return reached >= bars.last;
}

// Minutes to play as much of it as is asked for at a time.
double minutes_for(const PlacedPiece& piece, BarRange bars) {
  bars.last = std::min(bars.last, bars.first + piece.method().section_bars - 1);
  return piece.time.recall(bars, piece.planned->piece.hardest_level(bars));
}

struct Sections {
  std::vector<Missing> missing;
  int all = 0;
};

Sections sections_of(const PlacedPiece& piece) {
  const Plan& plan = *piece.plan;
  Sections found;
  for (const PlannedSection& section : piece.planned->sections) {
    if (section.same_as || counted_bars(section.bars) < numbers::kLeastWholeBars) continue;
    const auto learned = piece.learned_in(section.bars);
    if (!learned || plan.by - learned->date < days{numbers::kDaysLeft}) continue;
    const DateSpan window{learned->date + days{1},
                          learned->date + days{piece.method().section_days}};
    if (window.last < plan.from) continue;
    ++found.all;
    const auto in_time = [&](const PlacedTask& placed) { return window.contains(placed.date); };
    if (!played_whole(piece, section.bars, in_time))
      found.missing.push_back({section.bars, window});
  }
  return found;
}

std::vector<BarRange> halves_of(const PlacedPiece& piece) {
  const BarRange whole = piece.planned->piece.whole();
  if (counted_bars(whole) < 2 * numbers::kLeastWholeBars) return {};
  const int middle = (whole.first + whole.last + 1) / 2;
  const PhraseMap phrases(*piece.planned);
  int cut = -1;
  for (int bar = std::max(whole.first, 1) + 1; bar <= whole.last; ++bar)
    if (phrases.begins(bar) && (cut < 0 || std::abs(bar - middle) < std::abs(cut - middle)))
      cut = bar;
  if (cut < 0) cut = middle;
  return {{whole.first, cut - 1}, {cut, whole.last}};
}

// Returns how many of `all` halves are played whole.
int measure_halves(FigureBuilder& figure, const PlacedPiece& piece, int& all) {
  const std::vector<RunDay> runs = piece.runs();
  if (!piece.leaves(numbers::kDaysLeft) || piece.plan->upkeep || runs.empty() || runs.front().past)
    return 0;
  int good = 0;
  for (const BarRange& half : halves_of(piece)) {
    const auto learned = piece.learned_in(half);
    if (!learned) continue;
    ++all;
    const Date first = runs.front().date;
    const auto in_time = [&](const PlacedTask& placed) {
      return placed.date > learned->date && placed.date < first;
    };
    if (played_whole(piece, half, in_time)) {
      ++good;
      continue;
    }
    figure.lacks(with_mend(
        {.lack = Lack::half_not_whole, .piece = piece.index, .bars = {half}, .dates = {first}},
        *piece.plan, {learned->date + days{1}, first - days{1}}, minutes_for(piece, half)));
  }
  return good;
}

}  // namespace

std::vector<Missing> missing_sections(const PlacedPiece& piece) {
  return sections_of(piece).missing;
}

Figure growing_stretches(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::growing_stretches);
  for (const PlacedPiece& piece : placed.pieces) {
    const Sections sections = sections_of(piece);
    for (const Missing& missing : sections.missing)
      figure.lacks(with_mend({.lack = Lack::section_not_whole,
                              .piece = piece.index,
                              .bars = {missing.bars},
                              .wanted = static_cast<double>(piece.method().section_days)},
                             *placed.plan, missing.when, minutes_for(piece, missing.bars)));
    int all = sections.all;
    int good = sections.all - static_cast<int>(sections.missing.size());
    good += measure_halves(figure, piece, all);
    figure.all_of(good, all);
  }
  return figure.take();
}

}  // namespace cahier::figures
