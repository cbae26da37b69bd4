#include "plan/schedule/draft.h"

#include <algorithm>

#include "plan/schedule/day_order.h"

namespace cahier {

namespace {

// Whether the drill plays neighbouring chunks across their join with care enough to count.
bool plays_across(Drill drill) {
  return drill == Drill::join || drill == Drill::recall || drill == Drill::slow_pass ||
         drill == Drill::counted_pass;
}

}  // namespace

Ledger::Ledger(const Work& of, bool to_the_edge) : work(of), end(static_cast<int>(of.days.size())) {
  draft.days = work.days;
  for (int day = 0; day < end; ++day) {
    room.push_back(draft.days[day].allowance);
    if (room.back() > 0) practice_days.push_back(day);
  }
  for (int piece = 0; piece < static_cast<int>(work.anatomies.size()); ++piece)
    desks.push_back(std::make_unique<Desk>(work.anatomies[piece], work.terms, piece, practice_days,
                                           work.first, end, to_the_edge));
  for (const Day& day : work.past)
    for (const Task& task : day.tasks) remember(task, work.index_of(day.date));
}

void Ledger::remember(const Task& task, int day) {
  Desk& desk = *desks[task.piece];
  if (task.drill == Drill::learn) {
    desk.memory.learn(task.chunks.front(), day);
    desk.joins.learned(task.chunks.front(), day, desk.memory);
  }
  if (retrieves(task.drill)) desk.memory.retrieve(task.chunks, day);
  if (plays_across(task.drill)) desk.joins.played(task);
  if (plays_across(task.drill) && task.drill != Drill::join)
    for (std::size_t i = 0; i < desk.passes.size(); ++i)
      if (task.bars.contains(desk.anatomy.stretches[i].bars)) ++desk.passes[i];
  if (task.drill == Drill::cue_starts) {
    desk.proof.remember(task.cues);
    desk.forks.strike_met(task, desk.memory, day);
  }
  if (task.drill == Drill::run_through) {
    ++desk.runs_made;
    if (desk.last_run_made < day) ++desk.run_days_made;
    desk.last_run_made = day;
  }
  if (stage_of(task.drill) != Stage::temper) return;
  if (slipped_since(task, day))
    desk.temper.relax(task.chunks.front(), task.drill);
  else
    desk.temper.strike(task.chunks.front(), task.drill);
}

bool Ledger::slipped_since(const Task& task, int day) const {
  const auto& chunk = work.anatomies[task.piece].planned.chunks[task.chunks.front()];
  return chunk.raised && chunk.last_slip && work.index_of(*chunk.last_slip) >= day;
}

void Ledger::put(Task task, int day) {
  room[day] -= task.minutes;
  draft.days[day].tasks.push_back(std::move(task));
}

void Ledger::miss(const Task& task, Why why) {
  draft.unplaced.push_back({task.piece, task.drill, task.bars, task.minutes, why});
}

bool Ledger::stands_apart(const Task& task, int day) const {
  const auto& tasks = draft.days[day].tasks;
  return tasks.empty() || std::any_of(tasks.begin(), tasks.end(), [&](const Task& other) {
           return !same_passage(other, task);
         });
}

void Ledger::drill_forks(Desk& desk, int day) {
  for (auto fork = desk.forks.begin(); fork != desk.forks.end();) {
    const auto place = fork++;
    Task task = ForkList::task(**place, desk.make);
    if (task.minutes > room[day] || !ForkList::ready(**place, task, desk.memory, day)) continue;
    desk.memory.retrieve(task.chunks, day);
    put(std::move(task), day);
    desk.forks.strike(place);
  }
}

void Ledger::place_runs(int day) {
  for (auto& desk : desks) {
    if (desk->runs.runs[day] == 0 || !desk->memory.everything_learned()) continue;
    for (int run = 0; run < desk->runs.runs[day]; ++run) {
      Task task = desk->make.run_through();
      task.reason = run_reason(desk->runs_made++);
      draft.days[day].tasks.push_back(std::move(task));
    }
    desk->memory.retrieve_all(day);
  }
}

Reason Ledger::run_reason(int run) const {
  const auto made = static_cast<std::size_t>(run);
  const auto asked = static_cast<std::size_t>(work.terms.runs_required());
  if (asks_listener(made, asked)) return Reason::listener;
  return asks_recording(made, asked) ? Reason::recorded : Reason::whole;
}

void Ledger::finish(int index) {
  Day& day = draft.days[index];
  put_in_order(day,
               [&](const Task& task) { return work.anatomies[task.piece].level_in(task.bars); });
  divide_into_sittings(day, work.terms.blocks, work.terms.method.break_after);
  if (day.note != DayNote::none) return;
  const bool all_learned = std::all_of(desks.begin(), desks.end(), [](const auto& desk) {
    return desk->memory.everything_learned();
  });
  const bool today = std::any_of(desks.begin(), desks.end(), [&](const auto& desk) {
    return desk->memory.last_learning_day() == index;
  });
  if (all_learned && today) day.note = DayNote::everything_learned;
  if (index == practice_days.back()) day.note = DayNote::last_day;
}

void Ledger::collect_unplaced(bool runs) {
  for (const auto& desk : desks) {
    const auto& chunks = desk->anatomy.planned.chunks;
    for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk) {
      if (!desk->memory.learned(chunk))
        miss(desk->make.learn(chunk), Why::no_room_to_learn);
      else if (!desk->memory.holds_to_the_end(chunk))
        miss(desk->make.recall(chunks[chunk].bars), Why::no_room_to_recall);
    }
    for (const BarRange& bars : desk->joins.left_over())
      miss(desk->make.join(bars), Why::no_room_to_join);
    for (const Task& task : desk->forks.left_over(desk->make)) miss(task, Why::no_room_to_prove);
    for (const Task& task : desk->temper.left_over(desk->make)) miss(task, Why::no_room_to_temper);
    const int runs_missing = runs && desk->memory.everything_learned()
                                 ? desk->runs.missing
                                 : desk->runs_to_come(work.terms);
    for (int run = 0; run < runs_missing; ++run)
      miss(desk->make.run_through(), Why::no_room_to_run);
  }
}

}  // namespace cahier
