// Later editions for tests: a plan cut in two on a day, with what stood before it taken for done.
#pragma once

#include <algorithm>

#include "plan/plan.h"
#include "sound_plan.h"

namespace cahier::sample {

inline Done done(const Task& task, Date date) {
  Done made;
  made.date = date;
  made.piece = task.piece;
  made.drill = task.drill;
  made.bars = task.bars;
  made.slips.emplace();
  return made;
}

// The plan from a day on as edition 2, everything before done without a slip.
inline Plan later_edition(Plan plan, Date from) {
  LastEdition last;
  last.from = plan.from;
  last.minutes = 15;
  std::vector<Day> to_come;
  for (Day& day : plan.days) {
    if (day.date >= from) {
      to_come.push_back(day);
      continue;
    }
    for (Task& task : day.tasks) {
      task.id.clear();
      const int times = task.drill == Drill::run_through ? task.steps.front().times : 1;
      for (int time = 0; time < times; ++time) plan.record.done.push_back(done(task, day.date));
      ++last.tasks;
      if (task.drill == Drill::learn) last.bars_new += task.bars.size();
    }
    if (!day.tasks.empty()) plan.past.push_back(day);
  }
  last.tasks_done = last.tasks;
  last.bars_learned = last.bars_new;
  plan.from = from;
  plan.days = to_come;
  plan.record.edition = 2;
  plan.record.last = last;
  return plan;
}

// The sound plan with six run-throughs made, four of them clean, and one to come.
inline Plan with_runs() {
  Plan plan = later_edition(sound_plan(), parse_date("2027-01-14").value());
  plan.record.done.erase(
      std::remove_if(plan.record.done.begin(), plan.record.done.end(),
                     [](const Done& done) { return done.drill == Drill::run_through; }),
      plan.record.done.end());
  Done run;
  run.drill = Drill::run_through;
  run.bars = {1, 12};
  for (int number = 0; number < 6; ++number) {
    run.date = parse_date("2027-01-08").value() + days{number};
    run.slips.emplace();
    run.rejoined.clear();
    if (number == 1) run.slips = {3};
    if (number == 3) run.slips = {7, 11}, run.rejoined = {9};
    run.recorded = number > 2;
    run.listener = number == 5;
    plan.record.done.push_back(run);
  }
  return plan;
}

// Marks a chunk as one that slips, as the log does.
inline void let_slip(Plan& plan, int piece, int chunk, SlipCount count) {
  Chunk& slipping = plan.pieces[piece].chunks[chunk];
  slipping.slips = count;
  slipping.level = std::min(5, slipping.level + 1);
  slipping.raised = true;
}

// Gives cue starts other shares of the dice, as the table has them.
inline void share_dice(PlannedPiece& piece, const std::vector<int>& weights) {
  DiceTable& table = piece.dice.front();
  std::vector<std::vector<int>> outcomes;
  for (int first = 1; first <= table.faces; ++first)
    for (int second = 1; second <= table.faces; ++second) outcomes.push_back({first, second});
  int sum = 0;
  for (std::size_t at = 0; at < piece.cues.size(); ++at)
    sum += piece.cues[at].weight = weights[at % weights.size()];
  const int share = static_cast<int>(outcomes.size()) / sum;
  auto next = outcomes.begin();
  for (std::size_t at = 0; at < piece.cues.size(); ++at) {
    const auto end = next + share * piece.cues[at].weight;
    table.rows[at].outcomes.assign(next, end);
    next = end;
  }
  table.again.assign(next, outcomes.end());
}

}  // namespace cahier::sample
