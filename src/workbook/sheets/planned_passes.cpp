#include "workbook/sheets/planned_passes.h"

#include <algorithm>

#include "practice/metronome.h"
#include "text/phrasing.h"
#include "workbook/parts/task_words.h"

namespace cahier {

PassesByStretch passes_by_stretch(const Plan& plan) {
  PassesByStretch stretches;
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      const std::pair<int, BarRange> where{task.piece, task.bars};
      if (task.drill == Drill::slow_pass) stretches[where].slow.push_back({day.date, &task});
      if (task.drill == Drill::counted_pass) stretches[where].counted.push_back({day.date, &task});
    }
  return stretches;
}

bool has_slow_tempi(const Plan& plan) {
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks) {
      if (!shows_tempo(plan.pieces[task.piece], task)) continue;
      double slowest = *task.tempo;
      for (const TempoFrom& from : task.tempi) slowest = std::min(slowest, from.per_minute);
      if (slowest < kMetronomeMarks.front()) return true;
    }
  return false;
}

std::string sections_in(const Words& words, const PlannedPiece& piece, BarRange bars) {
  std::vector<std::string> names;
  for (const PlannedSection& section : piece.sections)
    if (section.bars.overlaps(bars)) names.push_back(section.name);
  return list_text(words, names);
}

}  // namespace cahier
