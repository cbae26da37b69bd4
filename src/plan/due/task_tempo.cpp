#include "plan/due/task_tempo.h"

#include <algorithm>
#include <optional>
#include <set>

#include "practice/beat_units.h"
#include "practice/metronome.h"

namespace cahier {
namespace {

constexpr double kFastest = kMetronomeMarks.back();

double full_tempo(const Piece& piece, int bar) {
  return tempo_or_usual(piece, bar).quarters_per_minute();
}

// Where a task begins to play, and where the piece's tempo changes on its way; of places with the
// same tempo as the one before only the first.
std::vector<int> places_of(const Task& task, const Piece& piece) {
  std::set<int> bars;
  for (const BarRange& played : task.played()) {
    bars.insert(played.first);
    for (const Change& change : piece.changes)
      if (change.bar > played.first && played.contains(change.bar)) bars.insert(change.bar);
  }
  if (bars.empty()) bars.insert(task.bars.first);
  std::vector<int> places;
  for (const int bar : bars)
    if (places.empty() || full_tempo(piece, bar) != full_tempo(piece, places.back()))
      places.push_back(bar);
  return places;
}

void take(Task& task, std::vector<TempoFrom> tempi) {
  task.tempo = tempi.front().per_minute;
  task.tempi = tempi.size() > 1 ? std::move(tempi) : std::vector<TempoFrom>();
}

std::vector<TempoFrom> tempi_of(const Task& task) {
  if (!task.tempi.empty()) return task.tempi;
  return {{task.bars.first, *task.tempo}};
}

// The task's tempi, each counted in `unit`.
std::vector<TempoFrom> counted(const Task& task, const Piece& piece, Beat unit) {
  std::vector<TempoFrom> tempi = tempi_of(task);
  for (TempoFrom& from : tempi) {
    const Tempo tempo{from.per_minute, task.beat};
    const bool exact = tempo.quarters_per_minute() == full_tempo(piece, from.bar);
    from.per_minute = counted_in(tempo, unit, exact);
  }
  return tempi;
}

bool needs_a_metronome(const Task& task) { return task.tempo && task.drill != Drill::run_through; }

bool too_fast(const std::vector<Task*>& tasks, const Piece& piece, Beat unit) {
  return std::any_of(tasks.begin(), tasks.end(), [&](const Task* task) {
    const std::vector<TempoFrom> tempi = counted(*task, piece, unit);
    return needs_a_metronome(*task) &&
           std::any_of(tempi.begin(), tempi.end(),
                       [](const TempoFrom& from) { return from.per_minute > kFastest; });
  });
}

std::optional<Beat> unit_for(const std::vector<Task*>& tasks, const Piece& piece) {
  std::optional<Beat> unit = tasks.front()->beat;
  for (const Task* task : tasks) {
    if (unit) unit = common_beat(*unit, task->beat);
  }
  if (!unit || too_fast(tasks, piece, *unit)) return std::nullopt;
  return unit;
}

}  // namespace

void set_tempo(Task& task, const Piece& piece, const TimeModel& time, double share) {
  const std::vector<int> places = places_of(task, piece);
  task.beat = tempo_or_usual(piece, places.front()).beat;
  std::optional<Beat> unit = task.beat;
  for (const int bar : places)
    if (unit) unit = common_beat(*unit, tempo_or_usual(piece, bar).beat);
  const auto in_beats_of = [&](Beat beat) {
    std::vector<TempoFrom> tempi;
    for (const int bar : places) {
      const Tempo tempo{time.mark(bar, share), tempo_or_usual(piece, bar).beat};
      tempi.push_back({bar, counted_in(tempo, beat, share >= 1)});
    }
    return tempi;
  };
  std::vector<TempoFrom> tempi = in_beats_of(unit.value_or(task.beat));
  if (unit && std::all_of(tempi.begin(), tempi.end(),
                          [](const TempoFrom& from) { return from.per_minute <= kFastest; }))
    task.beat = *unit;
  else
    tempi = in_beats_of(task.beat);
  take(task, std::move(tempi));
}

void count_in_one_beat(std::vector<Task>& tasks, const std::vector<const Piece*>& pieces) {
  for (int index = 0; index < static_cast<int>(pieces.size()); ++index) {
    const Piece& piece = *pieces[index];
    std::vector<Task*> of_piece;
    for (Task& task : tasks)
      if (task.piece == index && task.tempo) of_piece.push_back(&task);
    if (of_piece.empty()) continue;
    const std::optional<Beat> unit = unit_for(of_piece, piece);
    if (!unit) continue;
    for (Task* task : of_piece) {
      take(*task, counted(*task, piece, *unit));
      task->beat = *unit;
    }
  }
}

}  // namespace cahier
