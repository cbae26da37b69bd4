// Rule 5: what is learned comes back after a night, and then again and again to the end, bar by
// bar: a start inside a chunk recalls the bars from there on, and a bar in a return that whose
// notes it has.
//
// Read here as: the first recall falls on a later day, by the third practice day (the method's
// number) after learning, or by the last one when fewer are left. From learning to the first
// recall, between recalls, and from the last recall to the date, no gap is longer than the limit
// that spacing.h gives for the days left at its start. Where no practice day lies within the
// limit, the gap may run to the very next practice day, or to the date when there is none. Gaps
// that ended before the plan began are what they are; what was overdue when it began comes back
// within its first week.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"
#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

// By day, counted from the first; the day after the last is the date itself.
struct Calendar {
  explicit Calendar(const IndexedPlan& indexed) : first(indexed.first) {
    const int count = indexed.day_count();
    next_practice.assign(count, count);
    for (int day = 0; day < count; ++day)
      limit.push_back(longest_gap_days(indexed.plan.method, count - day));
    for (int day = count - 2; day >= 0; --day)
      next_practice[day] = indexed.days[day + 1]->allowance > 0 ? day + 1 : next_practice[day + 1];
    for (int day = first; day < std::min(count, first + numbers::kOverdueWeek); ++day)
      if (indexed.days[day]->allowance > 0) overdue_by = day;
  }

  int date() const { return static_cast<int>(limit.size()); }

  int latest_after(int day) const {
    const int practice = next_practice[day];
    if (day + limit[day] < first) return std::max(practice, overdue_by);
    return practice > day + limit[day] ? practice : day + limit[day];
  }

  // The day by which bars learned on `day` must have come back; `date()` when no practice day
  // follows.
  int first_recall_by(int day, int practice_days) const {
    int latest = next_practice[day];
    for (int count = 1; count < practice_days && latest < date(); ++count) {
      if (next_practice[latest] >= date()) break;
      latest = next_practice[latest];
    }
    return latest;
  }

  int first;            // day of the plan
  int overdue_by = -1;  // the last practice day of its first week
  std::vector<int> next_practice;
  std::vector<int> limit;
};

// Bars of one chunk that were always recalled together.
void check_bars(IndexedPlan& indexed, const IndexedPiece& piece, int chunk, const BarRange& bars,
                const Calendar& calendar) {
  const int learned = piece.learned[chunk]->day;
  const std::vector<int>& recalls = piece.recalled[bars.first];
  const auto day_text = [&](int day) { return iso(indexed.days.front()->date + days{day}); };
  const Chunk& of = piece.chunks()[chunk];
  const std::string name = bars == of.bars ? fmt::format("chunk {} ({})", of.id, in_words(of.bars))
                                           : fmt::format("{} of chunk {}", in_words(bars), of.id);

  const int first_by = calendar.first_recall_by(learned, indexed.plan.method.first_recall_days);
  const int first = recalls.empty() ? calendar.date() : recalls.front();
  if (first_by < calendar.date() && first > first_by)
    indexed.violation(5, Kind::first_recall_late,
                      fmt::format("{}, learned on {}, is not recalled by {}", name,
                                  day_text(learned), day_text(first_by)));

  int from = learned;
  const auto check_gap = [&](int to) {
    if (to >= calendar.first && to > calendar.latest_after(from))
      indexed.violation(
          5, Kind::gap_too_long,
          fmt::format("{} rests {} days from {} to {}; {} is the limit", name, to - from,
                      day_text(from), day_text(to), calendar.latest_after(from) - from));
    from = to;
  };
  for (const int day : recalls) check_gap(day);
  check_gap(calendar.date());
}

void check_chunk(IndexedPlan& indexed, const IndexedPiece& piece, int chunk,
                 const Calendar& calendar) {
  const BarRange& bars = piece.chunks()[chunk].bars;
  for (int bar = bars.first; bar <= bars.last;) {
    int last = bar;
    while (last < bars.last && piece.recalled[last + 1] == piece.recalled[bar]) ++last;
    check_bars(indexed, piece, chunk, {bar, last}, calendar);
    bar = last + 1;
  }
}

}  // namespace

void check_recalls(IndexedPlan& indexed) {
  if (!indexed.plan.fits) return;
  const Calendar calendar(indexed);
  for (const IndexedPiece& piece : indexed.pieces)
    for (std::size_t chunk = 0; chunk < piece.chunks().size(); ++chunk)
      if (piece.learned[chunk]) check_chunk(indexed, piece, static_cast<int>(chunk), calendar);
}

}  // namespace cahier
