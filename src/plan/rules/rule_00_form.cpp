// The plan as data: days follow one another, every index and bar exists.
#include <fmt/format.h>

#include <algorithm>

#include "plan/rules/indexed_plan.h"

namespace cahier {
namespace {

bool lies_in(const BarRange& bars, const BarRange& whole) {
  return bars.first <= bars.last && whole.contains(bars);
}

bool check_days(Judgement& judgement) {
  const Plan& plan = judgement.plan;
  if (plan.by - plan.from != days{plan.days.size()}) {
    judgement.breach(3, fmt::format("{} days are listed from {} to the day before {}",
                                    plan.days.size(), iso(plan.from), iso(plan.by)));
    return false;
  }
  for (std::size_t day = 0; day < plan.days.size(); ++day)
    if (plan.days[day].date != plan.from + days{day}) {
      judgement.breach(3, fmt::format("{} stands where {} should", iso(plan.days[day].date),
                                      iso(plan.from + days{day})));
      return false;
    }
  return true;
}

// Sets the judgement's days; false where what is past is in no order, or not past.
bool join_past(Judgement& judgement) {
  const Plan& plan = judgement.plan;
  const auto idle_until = [&](Date next) {
    if (judgement.days.empty()) return;
    for (Date date = judgement.days.back()->date + days{1}; date < next; date += days{1}) {
      judgement.idle.emplace_back();
      judgement.idle.back().date = date;
      judgement.days.push_back(&judgement.idle.back());
    }
  };
  for (const Day& done : plan.past) {
    const bool in_order = judgement.days.empty() || done.date > judgement.days.back()->date;
    if (!in_order || done.date >= plan.from || done.allowance > 0) {
      judgement.breach(0, fmt::format("{} is not a day before the plan", iso(done.date)));
      return false;
    }
    idle_until(done.date);
    judgement.days.push_back(&done);
  }
  idle_until(plan.from);
  judgement.first = judgement.day_count();
  for (const Day& day : plan.days) judgement.days.push_back(&day);
  return true;
}

bool check_sections_cover(Judgement& judgement, const PlannedPiece& planned) {
  const BarRange whole = planned.piece.whole();
  int next = whole.first;
  for (const PlannedSection& section : planned.sections) {
    if (section.bars.first != next || !lies_in(section.bars, whole)) break;
    if (section.same_as &&
        (!lies_in(*section.same_as, whole) || section.same_as->size() != section.bars.size())) {
      judgement.breach(
          1, fmt::format("section \"{}\" returns to bars that do not match it", section.name));
      return false;
    }
    next = section.bars.last + 1;
  }
  if (next == whole.last + 1 &&
      (planned.sections.empty() || planned.sections.back().bars.last == whole.last))
    return true;
  judgement.breach(1,
                   fmt::format("the sections do not hold each bar once; trouble at bar {}", next));
  return false;
}

bool check_piece(Judgement& judgement, const PlannedPiece& planned) {
  const BarRange whole = planned.piece.whole();
  if (whole.last < 1 || !check_sections_cover(judgement, planned)) return false;
  for (int bar = whole.first; bar <= whole.last; ++bar)
    if (!whole.contains(planned.piece.learned_bar(bar))) {
      judgement.breach(1, fmt::format("bar {} is learned outside the piece", bar));
      return false;
    }
  for (const Chunk& chunk : planned.chunks)
    if (!lies_in(chunk.bars, whole)) {
      judgement.breach(1, fmt::format("chunk {} lies outside the piece", chunk.id));
      return false;
    }
  for (const CueStart& cue : planned.cues)
    if (!whole.contains(cue.bar)) {
      judgement.breach(7, fmt::format("cue start {} lies outside the piece", cue.number));
      return false;
    }
  return true;
}

bool check_task(Judgement& judgement, const Moment& moment, const Task& task) {
  const auto& pieces = judgement.plan.pieces;
  if (task.piece < 0 || task.piece >= static_cast<int>(pieces.size())) {
    judgement.breach(0, fmt::format("task {} belongs to no piece", task.id));
    return false;
  }
  const PlannedPiece& planned = pieces[task.piece];
  if (!lies_in(task.bars, planned.piece.whole())) {
    judgement.breach(0, in_words(judgement, moment) + " lies outside the piece");
    return false;
  }
  const int chunk_count = static_cast<int>(planned.chunks.size());
  if (!std::all_of(task.chunks.begin(), task.chunks.end(),
                   [=](int chunk) { return 0 <= chunk && chunk < chunk_count; })) {
    judgement.breach(0, in_words(judgement, moment) + " names a chunk that does not exist");
    return false;
  }
  return true;
}

}  // namespace

bool check_form(Judgement& judgement) {
  bool sound = check_days(judgement) && join_past(judgement);
  if (judgement.plan.pieces.empty()) {
    judgement.breach(0, "the plan has no piece");
    sound = false;
  }
  for (const PlannedPiece& planned : judgement.plan.pieces)
    sound = check_piece(judgement, planned) && sound;
  judgement.each_task([&](const Moment& moment, const Task& task) {
    sound = check_task(judgement, moment, task) && sound;
  });
  for (const Unplaced& work : judgement.plan.unplaced)
    if (work.piece < 0 || work.piece >= static_cast<int>(judgement.plan.pieces.size())) {
      judgement.breach(0, "unplaced work belongs to no piece");
      sound = false;
    }
  return sound;
}

}  // namespace cahier
