// Figure 15: the tempo grows out of what was learned.
//
// Tempi are compared as shares of the performance tempo where the task begins. Choices: the first
// recall is the first task that tests memory on a later day. By steps: from one recall of a chunk
// to the next it rises by at most a fifth of the performance tempo; every recall planned is taken
// to hold. A section that comes back is asked for where it is learned; it is at nine tenths of its
// tempo where every bar of it is played from memory at the mark for nine tenths or faster. A task
// that plays bars of different tempi has not the tempo of each place. Neighbouring rows are
// neighbouring tasks of a day that have a tempo; the beat changes no more often than it must.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <utility>

#include "plan/counted_task.h"
#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

double performance(const PlacedPiece& piece, int bar) {
  return tempo_or_usual(piece.planned->piece, bar).quarters_per_minute();
}

double share(const PlacedPiece& piece, const Task& task) {
  return *task.tempo * quarters(task.beat) / performance(piece, task.bars.first);
}

void measure_recalls(FigureBuilder& figure, const PlacedPiece& piece) {
  const auto& chunks = piece.planned->chunks;
  std::vector<double> learned(chunks.size(), 0);   // 0 where it is not told
  std::vector<double> recalled(chunks.size(), 0);  // the last recall's
  std::vector<bool> tested(chunks.size(), false);
  double fastest = 0;
  double highest = 0;
  std::vector<BarRange> fast;
  std::vector<BarRange> leaps;
  for (const PlacedTask& one : piece.tasks) {
    if (!one.task->tempo) continue;
    const double now = share(piece, *one.task);
    for (const int chunk : one.task->chunks) {
      if (one.task->drill == Drill::learn) learned[chunk] = now;
      if (!retrieves(one.task->drill) || !piece.learned[chunk] ||
          one.date <= piece.learned[chunk]->date)
        continue;
      if (!tested[chunk] && learned[chunk] > 0 && !one.past) {
        const double times = now / learned[chunk];
        fastest = std::max(fastest, times);
        if (times > piece.method().first_recall_tempo + 1e-9) fast.push_back(chunks[chunk].bars);
      }
      tested[chunk] = true;
      if (one.task->drill != Drill::recall) continue;
      if (recalled[chunk] > 0 && !one.past) {
        highest = std::max(highest, now - recalled[chunk]);
        if (now - recalled[chunk] > piece.method().tempo_step + 1e-9)
          leaps.push_back(chunks[chunk].bars);
      }
      recalled[chunk] = now;
    }
  }
  const auto say = [&](Lack lack, std::vector<BarRange>& bars) {
    figure.lacks({.lack = lack, .piece = piece.index, .bars = put_together(bars)});
  };
  if (!figure.at_most(fastest, piece.method().first_recall_tempo))
    say(Lack::first_recall_fast, fast);
  if (!figure.at_most(highest, piece.method().tempo_step)) say(Lack::tempo_leaps, leaps);
}

void measure_sections(FigureBuilder& figure, const PlacedPiece& piece) {
  const std::vector<RunDay> runs = piece.runs();
  if (piece.plan->upkeep || (!runs.empty() && runs.front().past)) return;
  const Date first = runs.empty() ? piece.plan->by : runs.front().date;
  std::vector<int> times(static_cast<std::size_t>(piece.planned->piece.bars) + 1, 0);
  for (const PlacedTask& one : piece.tasks) {
    if (!retrieves(one.task->drill) || !one.task->tempo || one.date >= first) continue;
    const int at = one.task->bars.first;
    if (*one.task->tempo < piece.time.mark(at, piece.method().proved_tempo, one.task->beat) - 1e-9)
      continue;
    for (const BarRange& played : one.task->played())
      for (int bar = played.first; bar <= played.last; ++bar) ++times[bar];
  }
  int all = 0;
  std::vector<BarRange> slow;
  for (const PlannedSection& section : piece.planned->sections) {
    if (section.same_as) continue;
    ++all;
    const auto from = times.begin() + section.bars.first;
    if (*std::min_element(from, from + section.bars.size()) < piece.method().proved_times)
      slow.push_back(section.bars);
  }
  if (!figure.all_of(all - static_cast<int>(slow.size()), all))
    figure.lacks({.lack = Lack::never_near_tempo, .piece = piece.index, .bars = slow});
}

// Whether the task names a tempo for this bar, at about the share of the first one's: marks are a
// twentieth apart, and a tempo that is counted in other beats is rounded once more.
bool names_tempo(const PlacedPiece& piece, const Task& task, int bar) {
  const bool named = std::any_of(task.tempi.begin(), task.tempi.end(),
                                 [&](const TempoFrom& from) { return from.bar == bar; });
  const double found = task.tempo_at(bar) * quarters(task.beat) / performance(piece, bar);
  return named && std::abs(found / share(piece, task) - 1) <= numbers::kMarksApart;
}

bool has_its_tempo_everywhere(const PlacedPiece& piece, const Task& task) {
  std::set<int> places;
  for (const BarRange& played : task.played()) {
    places.insert(played.first);
    for (const Change& change : piece.planned->piece.changes)
      if (played.contains(change.bar)) places.insert(change.bar);
  }
  double before = performance(piece, task.bars.first);
  return std::all_of(places.begin(), places.end(), [&](int bar) {
    const double here = performance(piece, bar);
    return here == std::exchange(before, here) || names_tempo(piece, task, bar);
  });
}

void measure_places(FigureBuilder& figure, const PlacedPiece& piece) {
  int all = 0;
  int good = 0;
  std::vector<BarRange> mixed;
  for (const PlacedTask& one : piece.tasks) {
    if (one.past || !one.task->tempo) continue;
    ++all;
    if (has_its_tempo_everywhere(piece, *one.task))
      ++good;
    else
      mixed.push_back(one.task->bars);
  }
  if (figure.all_of(good, all)) return;
  std::ranges::sort(mixed);
  mixed.erase(std::unique(mixed.begin(), mixed.end()), mixed.end());
  figure.lacks({.lack = Lack::one_tempo, .piece = piece.index, .bars = mixed});
}

int changes_in(const std::vector<Beat>& beats) {
  int changes = 0;
  for (std::size_t i = 1; i < beats.size(); ++i) changes += beats[i] != beats[i - 1] ? 1 : 0;
  return changes;
}

void measure_beats(FigureBuilder& figure, const PlacedPiece& piece) {
  std::map<Date, std::vector<const Task*>> rows;
  for (const PlacedTask& one : piece.tasks)
    if (!one.past && one.task->tempo) rows[one.date].push_back(one.task);
  std::vector<Date> dates;
  int all = 0;
  for (const auto& [date, of_day] : rows) {
    std::vector<Beat> beats;
    for (const Task* task : of_day) beats.push_back(task->beat);
    const int more = changes_in(beats) - changes_in(beats_of_rows(of_day, piece.planned->piece));
    if (more <= 0) continue;
    all += more;
    dates.push_back(date);
  }
  if (!figure.at_most(all, 0))
    figure.lacks({.lack = Lack::beats_mixed, .piece = piece.index, .dates = dates});
}

}  // namespace

Figure tempo(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::tempo);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    measure_recalls(figure, piece);
    measure_sections(figure, piece);
    measure_places(figure, piece);
    measure_beats(figure, piece);
  }
  return figure.take();
}

}  // namespace cahier::figures
