#include "plan/counted_task.h"

#include <optional>

#include "practice/beat_units.h"
#include "practice/time_model.h"

namespace cahier {
namespace {

void add_music(const Task& task, const Piece& piece, std::vector<CountedMusic>& music) {
  const bool counted = task.drill != Drill::run_through;
  std::vector<TempoFrom> tempi = tempi_of(task);
  tempi.insert(tempi.end(), task.tempi_after_jumps.begin(), task.tempi_after_jumps.end());
  for (const TempoFrom& from : tempi)
    music.push_back({tempo_or_usual(piece, from.bar).beat, piece.meter_at(from.bar).quarters(),
                     counted ? from.per_minute * quarters(task.beat) : 0});
}

}  // namespace

std::vector<TempoFrom> tempi_of(const Task& task) {
  if (!task.tempi.empty()) return task.tempi;
  return {{task.bars.first, *task.tempo}};
}

std::vector<Beat> beats_of_rows(const std::vector<const Task*>& rows, const Piece& piece) {
  std::vector<Beat> beats;
  while (beats.size() < rows.size()) {
    std::vector<CountedMusic> music;
    std::optional<Beat> unit;
    std::size_t last = beats.size();
    for (; last < rows.size(); ++last) {
      add_music(*rows[last], piece, music);
      const std::optional<Beat> next = common_unit(music);
      if (!next) break;
      unit = next;
    }
    if (unit)
      beats.resize(last, *unit);
    else
      beats.push_back(rows[last]->beat);
  }
  return beats;
}

}  // namespace cahier
