// Small plans, made by hand, of which a test asks one figure: sixteen bars in two sections of two
// phrases, four chunks, learned on the first four days from Monday 4 January 2027.
#pragma once

#include <algorithm>
#include <utility>
#include <vector>

#include "plan/quality/quality.h"
#include "sound_plan.h"

namespace cahier::sample {

inline PlannedPiece phrased_piece() {
  PlannedPiece planned;
  planned.piece.title = "Lantern Study";
  planned.piece.bars = 16;
  planned.piece.tempo = Tempo{100, Beat::quarter};
  planned.piece.sections = {{"A", {1, 8}, {{1, 4}, {5, 8}}, {}, {}},
                            {"B", {9, 16}, {{9, 12}, {13, 16}}, {}, {}}};
  planned.sections = {{"A", {1, 8}, {}}, {"B", {9, 16}, {}}};
  planned.chunks = {
      {"A1", {1, 4}, 0, 2}, {"A2", {5, 8}, 0, 2}, {"B1", {9, 12}, 1, 2}, {"B2", {13, 16}, 1, 2}};
  planned.cues = {{1, 1, 0}, {2, 9, 1}};
  planned.dice = dice_tables({1, 2});
  return planned;
}

inline constexpr int kAllLearned = 3;  // the day of the last new bars

// Practice on every day, an hour each; days are counted from 0.
inline Plan empty_plan(int length) {
  Plan plan;
  plan.from = parse_date("2027-01-04").value();
  plan.by = plan.from + days{length};
  plan.method = sample::steady();
  plan.method.learn_tempo.fill(0.5);
  plan.method.learn_stumble.fill(1);
  plan.method.write_out_seconds.fill(30);
  plan.pieces = {phrased_piece()};
  for (int day = 0; day < length; ++day) {
    Day made;
    made.date = plan.from + days{day};
    made.allowance = 60;
    plan.days.push_back(made);
  }
  return plan;
}

inline void put(Plan& plan, int day, Task task) { plan.days[day].tasks.push_back(std::move(task)); }

// The date lies so many days after the last new bars.
inline Plan learned_plan(int days_left) {
  Plan plan = empty_plan(kAllLearned + days_left);
  const auto& chunks = plan.pieces[0].chunks;
  for (int chunk = 0; chunk < 4; ++chunk) put(plan, chunk, sound::learn(chunks[chunk].bars, chunk));
  return plan;
}

inline Task whole_run(int times = 1) {
  Task task = sound::task(Drill::run_through, {1, 16}, {0, 1, 2, 3}, 2.5 * times);
  task.steps[0].times = times;
  task.tempo = 100;
  return task;
}

inline void run_on(Plan& plan, const std::vector<int>& on) {
  for (const int day : on) put(plan, day, whole_run());
}

// The chunks of a plan without returns that lie in `bars`.
inline std::vector<int> chunks_within(const Plan& plan, BarRange bars) {
  std::vector<int> found;
  const auto& chunks = plan.pieces[0].chunks;
  for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk)
    if (bars.contains(chunks[chunk].bars)) found.push_back(chunk);
  return found;
}

inline Task played(const Plan& plan, Drill drill, BarRange bars) {
  Task task = sound::task(drill, bars, chunks_within(plan, bars), 2);
  task.tempo = 50;
  if (drill == Drill::write_out) task.tempo.reset();
  return task;
}

inline void play(Plan& plan, int day, Drill drill, BarRange bars) {
  put(plan, day, played(plan, drill, bars));
}

// Nothing where its conditions do not hold.
inline std::optional<QualityFigure> figure_of(const Plan& plan, FigureKind kind) {
  for (const QualityFigure& figure : quality(plan))
    if (figure.name == kind) return figure;
  return std::nullopt;
}

inline std::vector<Lack> lacks_of(const Plan& plan, FigureKind kind) {
  std::vector<Lack> found;
  if (const auto figure = figure_of(plan, kind))
    for (const Shortfall& shortfall : figure->why) found.push_back(shortfall.lack);
  return found;
}

}  // namespace cahier::sample
