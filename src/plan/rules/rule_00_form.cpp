// The plan as data: days follow one another, every index and bar exists.
#include <fmt/format.h>

#include <algorithm>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

bool lies_in(const BarRange& bars, const BarRange& whole) {
  return bars.first <= bars.last && whole.contains(bars);
}

bool check_days(IndexedPlan& indexed) {
  const Plan& plan = indexed.plan;
  if (plan.by - plan.from != days{plan.days.size()}) {
    indexed.violation(3, Kind::days_not_in_order,
                      fmt::format("{} days are listed from {} to the day before {}",
                                  plan.days.size(), iso(plan.from), iso(plan.by)));
    return false;
  }
  for (std::size_t day = 0; day < plan.days.size(); ++day)
    if (plan.days[day].date != plan.from + days{day}) {
      indexed.violation(3, Kind::days_not_in_order,
                        fmt::format("{} stands where {} should", iso(plan.days[day].date),
                                    iso(plan.from + days{day})));
      return false;
    }
  return true;
}

// Sets the days; false where what is past is in no order, or not past.
bool join_past(IndexedPlan& indexed) {
  const Plan& plan = indexed.plan;
  const auto idle_until = [&](Date next) {
    if (indexed.days.empty()) return;
    for (Date date = indexed.days.back()->date + days{1}; date < next; date += days{1}) {
      indexed.idle.emplace_back();
      indexed.idle.back().date = date;
      indexed.days.push_back(&indexed.idle.back());
    }
  };
  for (const Day& done : plan.past) {
    const bool in_order = indexed.days.empty() || done.date > indexed.days.back()->date;
    if (!in_order || done.date >= plan.from || done.allowance > 0) {
      indexed.violation(0, Kind::past_not_in_order,
                        fmt::format("{} is not a day before the plan", iso(done.date)));
      return false;
    }
    idle_until(done.date);
    indexed.days.push_back(&done);
  }
  idle_until(plan.from);
  indexed.first = indexed.day_count();
  for (const Day& day : plan.days) indexed.days.push_back(&day);
  return true;
}

bool check_sections_cover(IndexedPlan& indexed, const PlannedPiece& planned) {
  const BarRange whole = planned.piece.whole();
  int next = whole.first;
  for (const PlannedSection& section : planned.sections) {
    if (section.bars.first != next || !lies_in(section.bars, whole)) break;
    if (section.same_as &&
        (!lies_in(*section.same_as, whole) || section.same_as->size() != section.bars.size())) {
      indexed.violation(
          1, Kind::return_not_of_piece,
          fmt::format("section \"{}\" returns to bars that do not match it", section.name));
      return false;
    }
    next = section.bars.last + 1;
  }
  if (next == whole.last + 1 &&
      (planned.sections.empty() || planned.sections.back().bars.last == whole.last))
    return true;
  indexed.violation(1, Kind::sections_do_not_cover,
                    fmt::format("the sections do not hold each bar once; trouble at bar {}", next));
  return false;
}

bool check_piece(IndexedPlan& indexed, const PlannedPiece& planned) {
  const BarRange whole = planned.piece.whole();
  if (whole.last < 1 || !check_sections_cover(indexed, planned)) return false;
  const std::vector<int> learned_bars = planned.piece.learned_bars();
  for (int bar = whole.first; bar <= whole.last; ++bar)
    if (!whole.contains(learned_bars[bar])) {
      indexed.violation(1, Kind::outside_the_piece,
                        fmt::format("bar {} is learned outside the piece", bar));
      return false;
    }
  for (const Chunk& chunk : planned.chunks)
    if (!lies_in(chunk.bars, whole)) {
      indexed.violation(1, Kind::outside_the_piece,
                        fmt::format("chunk {} lies outside the piece", chunk.id));
      return false;
    }
  for (const CueStart& cue : planned.cues)
    if (!whole.contains(cue.bar)) {
      indexed.violation(7, Kind::outside_the_piece,
                        fmt::format("cue start {} lies outside the piece", cue.number));
      return false;
    }
  return true;
}

bool check_task(IndexedPlan& indexed, const Moment& moment, const Task& task) {
  const auto& pieces = indexed.plan.pieces;
  if (task.piece < 0 || task.piece >= static_cast<int>(pieces.size())) {
    indexed.violation(0, Kind::no_such_piece, fmt::format("task {} belongs to no piece", task.id));
    return false;
  }
  const PlannedPiece& planned = pieces[task.piece];
  if (!lies_in(task.bars, planned.piece.whole())) {
    indexed.violation(0, Kind::outside_the_piece,
                      in_words(indexed, moment) + " lies outside the piece");
    return false;
  }
  const int chunk_count = static_cast<int>(planned.chunks.size());
  if (!std::all_of(task.chunks.begin(), task.chunks.end(),
                   [=](int chunk) { return 0 <= chunk && chunk < chunk_count; })) {
    indexed.violation(0, Kind::no_such_chunk,
                      in_words(indexed, moment) + " names a chunk that does not exist");
    return false;
  }
  return true;
}

}  // namespace

bool check_form(IndexedPlan& indexed) {
  bool sound = check_days(indexed) && join_past(indexed);
  if (indexed.plan.pieces.empty()) {
    indexed.violation(0, Kind::no_piece, "the plan has no piece");
    sound = false;
  }
  for (const PlannedPiece& planned : indexed.plan.pieces)
    sound = check_piece(indexed, planned) && sound;
  indexed.each_task([&](const Moment& moment, const Task& task) {
    sound = check_task(indexed, moment, task) && sound;
  });
  for (const Unplaced& work : indexed.plan.unplaced)
    if (work.piece < 0 || work.piece >= static_cast<int>(indexed.plan.pieces.size())) {
      indexed.violation(0, Kind::no_such_piece, "unplaced work belongs to no piece");
      sound = false;
    }
  return sound;
}

}  // namespace cahier
