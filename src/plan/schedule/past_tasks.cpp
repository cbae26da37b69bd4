#include "plan/schedule/past_tasks.h"

#include <algorithm>
#include <iterator>
#include <set>

#include "plan/due/task_maker.h"

namespace cahier {
namespace {

class Remembered {
 public:
  Remembered(const Analysis& analysis, const Method& method, int piece)
      : analysis_(analysis), make_(analysis, method, piece) {}

  std::vector<Task> tasks(const Done& done) const {
    switch (facts_of(done.drill).covers) {
      case Covers::chunk:
        return by_chunk(done);
      case Covers::bars:
        return {make_.of_bars(done.drill, done.bars)};
      case Covers::starts:
        return {cue_starts(done)};
      case Covers::piece:
        return {make_.of_bars(done.drill, analysis_.planned.piece.whole())};
    }
    return {};
  }

 private:
  std::vector<Task> by_chunk(const Done& done) const {
    std::vector<Task> tasks;
    for (const int chunk : analysis_.chunks_in(done.bars))
      tasks.push_back(make_.of_chunk(done.drill, chunk));
    return tasks;
  }

  // Starts from bars that are no cue starts today count for what is played from there.
  Task cue_starts(const Done& done) const {
    std::vector<int> bars = done.starts;
    bars.insert(bars.end(), done.hit.begin(), done.hit.end());
    bars.insert(bars.end(), done.missed.begin(), done.missed.end());
    std::sort(bars.begin(), bars.end());
    const std::vector<int> each_time = bars;
    bars.erase(std::unique(bars.begin(), bars.end()), bars.end());
    std::vector<int> cues;
    std::vector<StartFromCue> begun;
    for (const int bar : bars) {
      const auto& starts = analysis_.starts;
      const auto start = std::find_if(starts.begin(), starts.end(),
                                      [&](const StartFromCue& one) { return one.bar == bar; });
      if (start != starts.end()) cues.push_back(static_cast<int>(start - starts.begin()) + 1);
      begun.push_back(start != starts.end() ? *start : analysis_.start_at(bar));
    }
    const int throws = static_cast<int>(done.hit.size() + done.missed.size());
    Task task = make_.cue_starts(cues, cues.empty() ? std::max(1, throws) : 0);
    std::set<int> chunks;
    task.from_starts.clear();
    for (const StartFromCue& start : begun) {
      chunks.insert(start.chunks.begin(), start.chunks.end());
      task.from_starts.push_back(start.bars);
    }
    task.chunks.assign(chunks.begin(), chunks.end());
    // As often as it was begun from: a drill of two ways on begins twice.
    task.cues.clear();
    for (const int bar : each_time)
      for (const int cue : cues)
        if (analysis_.starts[cue - 1].bar == bar) task.cues.push_back(cue);
    return task;
  }

  const Analysis& analysis_;
  TaskMaker make_;
};

}  // namespace

std::vector<Day> past_days(const Record& record, const std::vector<Analysis>& analyses,
                           const Method& method, Date from) {
  std::vector<Remembered> remembered;
  for (std::size_t piece = 0; piece < analyses.size(); ++piece)
    remembered.emplace_back(analyses[piece], method, static_cast<int>(piece));
  std::vector<Day> past;
  for (const Done& done : record.done) {
    if (done.date >= from) continue;
    if (past.empty() || past.back().date != done.date) {
      past.emplace_back();
      past.back().date = done.date;
    }
    for (Task& task : remembered[done.piece].tasks(done)) past.back().tasks.push_back(task);
  }
  for (Day& day : past)
    std::stable_partition(day.tasks.begin(), day.tasks.end(),
                          [](const Task& task) { return task.drill == Drill::learn; });
  return past;
}

std::vector<Day> calendar_with_past(const Terms& terms) {
  std::vector<Day> days_of_plan = calendar(terms);
  const auto& done = terms.record.done;
  if (done.empty() || done.front().date >= terms.from) return days_of_plan;
  std::vector<Day> all;
  for (Date date = done.front().date; date < terms.from; date += days{1}) {
    all.emplace_back();
    all.back().date = date;
    all.back().off = true;
  }
  all.insert(all.end(), std::make_move_iterator(days_of_plan.begin()),
             std::make_move_iterator(days_of_plan.end()));
  return all;
}

}  // namespace cahier
