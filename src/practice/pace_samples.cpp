#include "practice/pace_samples.h"

#include <algorithm>
#include <iterator>

#include "practice/time_model.h"

namespace cahier {
namespace {

class ExpectedMinutes {
 public:
  ExpectedMinutes(const std::vector<Piece>& pieces, Method method)
      : pieces_(pieces), method_(std::move(method)) {
    method_.learn_factor = 1;
    method_.pace.fill(1);
  }

  int level(const Done& done) const { return pieces_[done.piece].hardest_level(done.bars); }

  double minutes(const Done& done) const {
    const TimeModel time(pieces_[done.piece], method_);
    const int starts = static_cast<int>(done.starts.size() + done.hit.size() + done.missed.size());
    return time.minutes(done.drill, done.bars, level(done), starts);
  }

 private:
  const std::vector<Piece>& pieces_;
  Method method_;
};

using ReportedTasks = std::vector<Done>::const_iterator;

// The sample that a day's minutes give, after what is known of its drills.
void add_day(ReportedTasks first, ReportedTasks last, double day_minutes,
             const ExpectedMinutes& expected_minutes, std::vector<PaceSample>& samples) {
  double left = day_minutes;
  double expected = 0;
  std::vector<std::pair<int, double>> learned;  // level and expected minutes
  for (auto done = first; done != last; ++done) {
    const double minutes = expected_minutes.minutes(*done);
    if (done->drill == Drill::learn && !done->minutes) {
      learned.emplace_back(expected_minutes.level(*done), minutes);
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
  const ExpectedMinutes expected_minutes(pieces, method);
  std::vector<PaceSample> samples;
  for (const Done& done : record.done)
    if (done.drill == Drill::learn && done.minutes)
      samples.push_back(
          {expected_minutes.level(done), *done.minutes / expected_minutes.minutes(done), 1});
  for (const DayMinutes& day : record.minutes) {
    const auto first = std::ranges::lower_bound(record.done, day.date, {}, &Done::date);
    const auto last = std::ranges::upper_bound(record.done, day.date, {}, &Done::date);
    add_day(first, last, day.minutes, expected_minutes, samples);
  }
  return samples;
}

}  // namespace cahier
