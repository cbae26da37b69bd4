#include "plan/due/longer_stretches.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>

#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {

std::vector<BarRange> halves(const PlannedPiece& planned) {
  const BarRange whole = planned.piece.whole();
  const int middle = (whole.first + whole.last + 1) / 2;
  int cut = -1;
  const auto consider = [&](int start) {
    if (start > whole.first && (cut < 0 || std::abs(start - middle) < std::abs(cut - middle)))
      cut = start;
  };
  for (const PlannedSection& section : planned.sections) consider(section.bars.first);
  for (const Section& section : planned.piece.sections)
    for (const BarRange& phrase : section.phrases) consider(phrase.first);
  if (whole.size() < 2 * numbers::kLeastWholeBars) return {};
  if (cut < 0) cut = middle;
  return {{whole.first, cut - 1}, {cut, whole.last}};
}

namespace {

// The sections that are learned where they stand and fall into several stretches.
std::vector<BarRange> long_sections(const Analysis& analysis) {
  const PlannedPiece& planned = analysis.planned;
  std::vector<int> stretches(planned.sections.size(), 0);
  for (const Stretch& stretch : analysis.stretches)
    ++stretches[planned.chunks[stretch.first_chunk].section];
  std::vector<BarRange> sections;
  for (std::size_t index = 0; index < planned.sections.size(); ++index)
    if (!planned.sections[index].same_as && stretches[index] > 1)
      sections.push_back(planned.sections[index].bars);
  return sections;
}

class Booker {
 public:
  Booker(const TaskMaker& make, const Method& method, std::vector<double>& room, int learn_until)
      : make_(make), method_(method), room_(room), first_day_(learn_until + 2) {}

  // Books them all on one day where one holds them, else each on its own; returns the first day
  // booked, or `before` for none.
  int book(const std::vector<BarRange>& all, int before, Reason reason) {
    std::vector<double> minutes;
    for (const BarRange& bars : all) minutes.push_back(make_.recall(bars).minutes);
    const double sum = std::accumulate(minutes.begin(), minutes.end(), 0.0);
    const int together = nearest(before, sum);
    int first = before;
    for (std::size_t i = 0; i < all.size(); ++i) {
      const int day = together >= 0 ? together : nearest(before, minutes[i]);
      if (day < 0) continue;
      room_[day] -= minutes[i];
      bookings_.push_back({day, all[i], minutes[i], reason});
      first = std::min(first, day);
    }
    return first;
  }

  std::vector<ReservedRecall> take() {
    std::stable_sort(
        bookings_.begin(), bookings_.end(),
        [](const ReservedRecall& a, const ReservedRecall& b) { return a.day < b.day; });
    return std::move(bookings_);
  }

 private:
  // The day with room nearest to a best gap before `before`, or to half the way from the last new
  // bars where that is nearer; -1 for none.
  int nearest(int before, double minutes) const {
    const int end = static_cast<int>(room_.size());
    int best = -1;
    double best_off = 0;
    for (int day = std::max(0, first_day_); day < before; ++day) {
      const double gap =
          std::min(best_gap(method_, end - day), static_cast<double>(before - first_day_ + 1) / 2);
      const double off = std::abs(before - day - gap);
      if (room_[day] < minutes || (best >= 0 && off > best_off)) continue;
      best = day;
      best_off = off;
    }
    return best;
  }

  const TaskMaker& make_;
  const Method& method_;
  std::vector<double>& room_;
  int first_day_;
  std::vector<ReservedRecall> bookings_;
};

}  // namespace

std::vector<ReservedRecall> reserve_longer_stretches(const Analysis& analysis,
                                                     const TaskMaker& make, const Method& method,
                                                     std::vector<double>& room, int learn_until,
                                                     int first_run) {
  Booker booker(make, method, room, learn_until);
  const int halves_on = booker.book(halves(analysis.planned), first_run, Reason::half);
  if (halves_on < first_run)
    for (const BarRange& section : long_sections(analysis))
      booker.book({section}, halves_on, Reason::section);
  return booker.take();
}

}  // namespace cahier
