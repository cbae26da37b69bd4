#include "practice/pace_samples.h"

#include <algorithm>
#include <iterator>

#include "practice/time_model.h"

namespace cahier {

double expected_minutes(const Done& done, const Piece& piece, Method method) {
  method.learn_factor = 1;
  method.pace.fill(1);
  const int starts = static_cast<int>(done.starts.size() + done.hit.size() + done.missed.size());
  return TimeModel(piece, method)
      .minutes(done.drill, done.bars, piece.hardest_level(done.bars), starts);
}

namespace {

using ReportedTasks = std::vector<Done>::const_iterator;

// The sample that a day's minutes give, after what is known of its drills.
void add_day(ReportedTasks first, ReportedTasks last, double day_minutes,
             const std::vector<Piece>& pieces, const Method& method,
             std::vector<PaceSample>& samples) {
  double left = day_minutes;
  double expected = 0;
  std::vector<std::pair<int, double>> learned;  // level and expected minutes
  for (auto done = first; done != last; ++done) {
    const Piece& piece = pieces[done->piece];
    const double minutes = expected_minutes(*done, piece, method);
    if (done->drill == Drill::learn && !done->minutes) {
      learned.emplace_back(piece.hardest_level(done->bars), minutes);
      expected += minutes;
    } else {
      left -= done->minutes.value_or(minutes);
    }
  }
  if (learned.empty() || left <= 0) return;
  for (const auto& [level, minutes] : learned)
    samples.push_back({level, left / expected, minutes / expected});
}

}  // namespace

std::vector<PaceSample> pace_samples(const Record& record, const std::vector<Piece>& pieces,
                                     const Method& method) {
  std::vector<PaceSample> samples;
  for (const Done& done : record.done)
    if (done.drill == Drill::learn && done.minutes)
      samples.push_back({pieces[done.piece].hardest_level(done.bars),
                         *done.minutes / expected_minutes(done, pieces[done.piece], method), 1});
  for (const DayMinutes& day : record.minutes) {
    const auto first = std::ranges::lower_bound(record.done, day.date, {}, &Done::date);
    const auto last = std::ranges::upper_bound(record.done, day.date, {}, &Done::date);
    add_day(first, last, day.minutes, pieces, method, samples);
  }
  return samples;
}

}  // namespace cahier
