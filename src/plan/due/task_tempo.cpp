#include "plan/due/task_tempo.h"

#include <optional>
#include <set>

#include "plan/counted_task.h"
#include "practice/beat_units.h"

namespace cahier {
namespace {

double full_tempo(const Piece& piece, int bar) {
  return tempo_or_usual(piece, bar).quarters_per_minute();
}

// Where a task begins to play, and where the piece's tempo changes on its way; of places with the
// same tempo as the one before only the first.
std::vector<int> places_of(const Task& task, const Piece& piece) {
  if (piece.changes.empty()) return {task.bars.first};
  std::set<int> bars;
  for (const BarRange& played : task.played()) {
    bars.insert(played.first);
    for (const Change& change : piece.changes)
      if (change.bar > played.first && played.contains(change.bar)) bars.insert(change.bar);
  }
  for (const PlayedWay& way : task.ways)
    if (task.bars.contains(way.to)) bars.insert(way.to);
  if (bars.empty()) bars.insert(task.bars.first);
  std::vector<int> places;
  for (const int bar : bars)
    if (places.empty() || full_tempo(piece, bar) != full_tempo(piece, places.back()))
      places.push_back(bar);
  return places;
}

// Outside its bars, where a way leads into another tempo.
std::vector<int> places_after_jumps(const Task& task, const Piece& piece) {
  std::set<int> bars;
  for (const PlayedWay& way : task.ways)
    if (!task.bars.contains(way.to) && full_tempo(piece, way.to) != full_tempo(piece, way.at))
      bars.insert(way.to);
  return {bars.begin(), bars.end()};
}

void take(Task& task, std::vector<TempoFrom> tempi) {
  task.tempo = tempi.front().per_minute;
  task.tempi = tempi.size() > 1 ? std::move(tempi) : std::vector<TempoFrom>();
}

// Tempi that count `beat`, each counted in `unit`.
std::vector<TempoFrom> counted(std::vector<TempoFrom> tempi, const Piece& piece, Beat beat,
                               Beat unit) {
  for (TempoFrom& from : tempi) {
    const Tempo tempo{from.per_minute, beat};
    const bool exact = tempo.quarters_per_minute() == full_tempo(piece, from.bar);
    from.per_minute = counted_in(tempo, unit, exact);
  }
  return tempi;
}

}  // namespace

void set_tempo(Task& task, const Piece& piece, const TimeModel& time, double share) {
  std::vector<int> places = places_of(task, piece);
  const std::size_t in_bars = places.size();
  for (const int bar : places_after_jumps(task, piece)) places.push_back(bar);
  task.beat = tempo_or_usual(piece, places.front()).beat;
  std::vector<CountedMusic> music;
  std::vector<Tempo> marks;
  for (const int bar : places) {
    marks.push_back({time.mark(bar, share), tempo_or_usual(piece, bar).beat});
    music.push_back(
        {marks.back().beat, piece.meter_at(bar).quarters(), marks.back().quarters_per_minute()});
  }
  task.beat = common_unit(music).value_or(task.beat);
  std::vector<TempoFrom> tempi;
  for (std::size_t i = 0; i < places.size(); ++i)
    tempi.push_back({places[i], counted_in(marks[i], task.beat, share >= 1)});
  const auto jumps = tempi.begin() + static_cast<std::ptrdiff_t>(in_bars);
  task.tempi_after_jumps.assign(jumps, tempi.end());
  tempi.erase(jumps, tempi.end());
  take(task, std::move(tempi));
}

void count_in_one_beat(std::vector<Task>& tasks, const std::vector<const Piece*>& pieces) {
  for (int index = 0; index < static_cast<int>(pieces.size()); ++index) {
    const Piece& piece = *pieces[index];
    std::vector<Task*> own;
    for (Task& task : tasks)
      if (task.piece == index && task.tempo) own.push_back(&task);
    const std::vector<Beat> beats = beats_of_rows({own.begin(), own.end()}, piece);
    for (std::size_t row = 0; row < own.size(); ++row) {
      Task& task = *own[row];
      task.tempi_after_jumps = counted(task.tempi_after_jumps, piece, task.beat, beats[row]);
      take(task, counted(tempi_of(task), piece, task.beat, beats[row]));
      task.beat = beats[row];
    }
  }
}

}  // namespace cahier
