// Figure 9: spoken and written work is the third stage: little, late, weakest first, and never in
// place of anything else. Share and order hold always, the rest as usual.
//
// Choices: a week is any seven days running. It stands in place of a join, a pass, a section or a
// run-through where one of these is missing (figures 6, 7, 5 and 1) and spoken or written work of
// the same piece stands on a day on which it should have come.
#include <algorithm>
#include <set>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/missing.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

bool is_temper(const PlacedTask& placed) { return stage_of(placed.task->drill) == Stage::temper; }

std::vector<PlacedTask> planned_temper(const PlacedPiece& piece) {
  std::vector<PlacedTask> found;
  for (const PlacedTask& placed : piece.tasks)
    if (is_temper(placed) && !placed.past) found.push_back(placed);
  return found;
}

void measure_share(FigureBuilder& figure, const PlacedPiece& piece) {
  double all = 0;
  double temper = 0;
  for (const PlacedTask& placed : piece.tasks) {
    if (placed.past) continue;
    all += placed.task->minutes;
    if (is_temper(placed)) temper += placed.task->minutes;
  }
  if (all <= 0 || figure.at_most(temper / all, piece.method().temper_share)) return;
  figure.lacks({.lack = Lack::temper_share,
                .piece = piece.index,
                .found = 100 * temper / all,
                .wanted = 100 * piece.method().temper_share});
}

void measure_last_week(FigureBuilder& figure, const PlacedPiece& piece,
                       const std::vector<PlacedTask>& temper) {
  std::vector<Date> late;
  for (const PlacedTask& placed : temper)
    if (placed.date >= piece.plan->by - days{numbers::kTemperWeek}) late.push_back(placed.date);
  if (figure.at_most(static_cast<double>(late.size()), 0)) return;
  late.erase(std::unique(late.begin(), late.end()), late.end());
  figure.lacks({.lack = Lack::temper_at_the_end, .piece = piece.index, .dates = late});
}

void measure_weeks(FigureBuilder& figure, const PlacedPiece& piece) {
  std::vector<std::vector<PlacedTask>> by_bar(piece.planned->piece.bars + 1);
  for (const PlacedTask& placed : piece.tasks)
    if (is_temper(placed))
      for (int bar = placed.task->bars.first; bar <= placed.task->bars.last; ++bar)
        by_bar[bar].push_back(placed);
  int most = 0;
  std::vector<int> bars;
  for (int bar = 0; bar < static_cast<int>(by_bar.size()); ++bar) {
    int here = 0;
    const auto& turns = by_bar[bar];
    for (std::size_t last = 0, first = 0; last < turns.size(); ++last) {
      while (turns[last].date - turns[first].date >= days{numbers::kTemperWeek}) ++first;
      if (!turns[last].past) here = std::max(here, static_cast<int>(last - first) + 1);
    }
    if (here > numbers::kMostTemperInAWeek) bars.push_back(bar);
    most = std::max(most, here);
  }
  if (!figure.at_most(most, numbers::kMostTemperInAWeek))
    figure.lacks({.lack = Lack::temper_too_often, .piece = piece.index, .bars = as_ranges(bars)});
}

// Goes through the tasks in order and knows which bars have been in a pass.
class WeakestFirst {
 public:
  explicit WeakestFirst(const PlacedPiece& piece)
      : piece_(piece), passed_(piece.planned->piece.bars + 1, false) {}

  void measure(FigureBuilder& figure) {
    for (const PlacedTask& placed : piece_.tasks) follow(placed);
    say(figure, Lack::temper_before_pass, unpassed_);
    say(figure, Lack::temper_before_weaker, unready_);
  }

 private:
  const std::vector<Chunk>& chunks() const { return piece_.planned->chunks; }

  bool is_passed(BarRange bars) const {
    for (int bar = bars.first; bar <= bars.last; ++bar)
      if (!passed_[bar]) return false;
    return true;
  }

  void follow(const PlacedTask& placed) {
    const Task& task = *placed.task;
    if (is_pass(task.drill))
      for (int bar = task.bars.first; bar <= task.bars.last; ++bar) passed_[bar] = true;
    if (!is_temper(placed)) return;
    auto& touched = touched_[task.drill == Drill::spoken_part ? 0 : 1];
    touched.insert(task.chunks.begin(), task.chunks.end());
    if (placed.past) return;
    if (!is_passed(task.bars)) unpassed_.push_back(task.bars);
    if (weaker_waits(placed, touched)) unready_.push_back(task.bars);
  }

  // A weaker chunk that is ready for the same drill and has not had it.
  bool weaker_waits(const PlacedTask& placed, const std::set<int>& touched) const {
    int level = 5;
    for (const int chunk : placed.task->chunks) level = std::min(level, chunks()[chunk].level);
    for (int chunk = 0; chunk < static_cast<int>(chunks().size()); ++chunk)
      if (chunks()[chunk].level > level && !touched.contains(chunk) && piece_.learned[chunk] &&
          piece_.learned[chunk]->date < placed.date && is_passed(chunks()[chunk].bars))
        return true;
    return false;
  }

  void say(FigureBuilder& figure, Lack lack, const std::vector<BarRange>& bars) const {
    if (figure.at_most(static_cast<double>(bars.size()), 0)) return;
    figure.lacks({.lack = lack, .piece = piece_.index, .bars = put_together(bars)});
  }

  const PlacedPiece& piece_;
  std::vector<bool> passed_;
  std::set<int> touched_[2];  // chunks that were spoken, and written out
  std::vector<BarRange> unpassed_;
  std::vector<BarRange> unready_;
};

std::vector<Missing> everything_missing(const PlacedPiece& piece) {
  std::vector<Missing> all = missing_seams(piece);
  for (const auto& more : {missing_passes(piece), missing_sections(piece)})
    all.insert(all.end(), more.begin(), more.end());
  const std::vector<RunDay> runs = piece.runs();
  if (const auto window = first_run_window(piece))
    if (runs.empty() || (!runs.front().past && runs.front().date > window->last))
      all.push_back({piece.planned->piece.whole(), *window});
  return all;
}

void measure_in_place(FigureBuilder& figure, const PlacedPiece& piece,
                      const std::vector<PlacedTask>& temper) {
  std::vector<Date> dates;
  std::vector<BarRange> bars;
  int in_place = 0;
  const std::vector<Missing> missing = everything_missing(piece);
  for (const PlacedTask& placed : temper) {
    const auto is_its_day = [&](const Missing& one) { return one.when.contains(placed.date); };
    if (std::ranges::none_of(missing, is_its_day)) continue;
    ++in_place;
    if (dates.empty() || dates.back() != placed.date) dates.push_back(placed.date);
  }
  if (figure.at_most(in_place, 0)) return;
  for (const Missing& one : missing)
    if (std::ranges::any_of(dates, [&](Date date) { return one.when.contains(date); }))
      bars.push_back(one.bars);
  figure.lacks({.lack = Lack::temper_in_place,
                .piece = piece.index,
                .bars = put_together(bars),
                .dates = dates});
}

}  // namespace

Figure spoken_and_written(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::spoken_and_written);
  for (const PlacedPiece& piece : placed.pieces) {
    const std::vector<PlacedTask> temper = planned_temper(piece);
    if (temper.empty()) continue;
    measure_share(figure, piece);
    WeakestFirst(piece).measure(figure);
    measure_in_place(figure, piece, temper);
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    measure_last_week(figure, piece, temper);
    measure_weeks(figure, piece);
  }
  return figure.take();
}

}  // namespace cahier::figures
