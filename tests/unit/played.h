// What a player did of a plan, for tests: everything, or what a test lets through.
#pragma once

#include <functional>

#include "plan/plan.h"

namespace cahier::sample {

// One task as done.
inline Done done_of(const Plan& plan, const Day& day, const Task& task) {
  Done done;
  done.date = day.date;
  done.piece = task.piece;
  done.drill = task.drill;
  done.bars = task.bars;
  for (const int cue : task.cues) done.starts.push_back(plan.pieces[task.piece].cues[cue - 1].bar);
  if (task.drill != Drill::cue_starts) done.slips.emplace();
  return done;
}

using Doing = std::function<bool(const Day&, const Task&)>;

// The cue starts of a plan's pieces, as its workbook numbers them.
inline std::vector<NumberedStarts> numbered_in(const Plan& plan) {
  std::vector<NumberedStarts> all;
  for (const PlannedPiece& piece : plan.pieces) {
    NumberedStarts& starts = all.emplace_back();
    for (const CueStart& cue : piece.cues) starts.bars.push_back(cue.bar);
    starts.before = static_cast<int>(starts.bars.size());
  }
  return all;
}

// The record after the days before `until`, of the tasks that `does` lets through.
inline Record played(
    const Plan& plan, Date until,
    const Doing& does = [](const Day&, const Task&) { return true; }) {
  Record record = plan.record;
  record.edition = plan.record.edition + 1;
  record.starts = numbered_in(plan);
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (day.date < until && does(day, task)) record.done.push_back(done_of(plan, day, task));
  return record;
}

}  // namespace cahier::sample
