#include "log/last_edition.h"

#include <algorithm>

namespace cahier {
namespace {

// Bars as they are counted: without a pickup.
int counted(BarRange bars) { return std::max(0, bars.last - std::max(bars.first, 1) + 1); }

bool is_learned(const LearnedInLog& learned, const SetTask& task) {
  return !learned.of(task.piece).first_unlearned(task.bars);
}

// What of a task's bars is still not learned, from the first such bar to the last.
std::optional<MissedBars> missed(const LearnedInLog& learned, const SetTask& task) {
  const LearnedBars& known = learned.of(task.piece);
  const auto first = known.first_unlearned(task.bars);
  if (!first) return std::nullopt;
  int last = task.bars.last;
  while (known.since(last)) --last;
  return MissedBars{task.piece, {*first, last}, task.date};
}

// Days of new bars that `learned` bars do not reach before `from`; less than 0 for those after it
// that they do reach.
int days_behind(const std::vector<SetTask>& tasks, int learned, Date from) {
  int behind = 0;
  int bars = 0;
  for (std::size_t at = 0; at < tasks.size();) {
    const Date date = tasks[at].date;
    int new_bars = 0;
    for (; at < tasks.size() && tasks[at].date == date; ++at)
      if (tasks[at].drill == Drill::learn) new_bars += counted(tasks[at].bars);
    if (new_bars == 0) continue;
    bars += new_bars;
    if (date < from && bars > learned) ++behind;
    if (date >= from && bars <= learned) --behind;
  }
  return behind;
}

}  // namespace

LastEdition what_became_of(PastEdition& edition, PastEditions& editions, const LogReading& reading,
                           const Terms& terms) {
  LastEdition last;
  last.number = edition.number;
  last.from = edition.from;
  last.minutes = edition.minutes ? edition.minutes : longest_day(terms);
  for (const Done& done : reading.record.done)
    if (done.drill == Drill::learn && done.date >= edition.from)
      last.bars_learned += counted(done.bars);
  const std::vector<SetTask> tasks = editions.tasks_of(edition, terms.from);
  for (const SetTask& task : tasks) {
    if (task.date >= terms.from) continue;
    ++last.tasks;
    const bool learn = task.drill == Drill::learn;
    if (learn) last.bars_new += counted(task.bars);
    const bool ticked = reading.ticked.contains({edition.number, task.code});
    if (ticked || (learn && is_learned(reading.learned, task))) ++last.tasks_done;
    if (const auto bars = learn ? missed(reading.learned, task) : std::nullopt)
      last.missed.push_back(*bars);
  }
  last.days_behind = days_behind(tasks, last.bars_learned, terms.from);
  if (!edition.keep && edition.by == terms.by) last.ahead = editions.ahead(edition, terms.from);
  return last;
}

}  // namespace cahier
