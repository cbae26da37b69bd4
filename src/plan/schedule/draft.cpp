#include "plan/schedule/draft.h"

#include <algorithm>
#include <utility>

#include "plan/due/task_tempo.h"
#include "plan/due/witnessed_runs.h"
#include "plan/schedule/day_order.h"

namespace cahier {
namespace {

constexpr double kTaskEffort = 20;  // takes as long as so many chunks do on one day

}  // namespace

Draft::Draft(const Work& of, bool to_the_edge, bool lets_go)
    : work(of), end(static_cast<int>(of.days.size())), lets_go_(lets_go) {
  schedule.days = work.days;
  for (int day = 0; day < end; ++day) {
    room.push_back(schedule.days[day].allowance);
    if (room.back() > 0) practice_days.push_back(day);
  }
  for (int piece = 0; piece < static_cast<int>(work.analyses.size()); ++piece)
    pieces.push_back(std::make_unique<PieceProgress>(work.analyses[piece], work.terms, piece,
                                                     practice_days, work.first, end, to_the_edge));
  for (const Day& day : work.past)
    for (const Task& task : day.tasks) remember(task, work.index_of(day.date));
}

void Draft::remember(const Task& task, int day) {
  PieceProgress& progress = *pieces[task.piece];
  if (task.drill == Drill::learn) {
    progress.recalls.learn(task.chunks.front(), day);
    progress.joins.learned(task.chunks.front(), day, progress.recalls);
  }
  const DrillFacts& facts = facts_of(task.drill);
  if (facts.retrieves) {
    Task at_no_tempo = task;  // none was written down
    at_no_tempo.tempo.reset();
    progress.recalls.retrieve(at_no_tempo, day);
    if (task.drill == Drill::recall) progress.recalls.tempo().climbed(task.chunks);
  }
  if (facts.plays_across) progress.joins.played(task);
  progress.return_seams.played(task, day);
  progress.sections.played(task);
  progress.passes_due.played(task);
  const bool passes = facts.plays_across && facts.retrieves;
  if (passes)
    for (std::size_t i = 0; i < progress.passes.size(); ++i)
      if (task.bars.contains(progress.analysis.stretches[i].bars)) ++progress.passes[i];
  if (task.drill == Drill::cue_starts) {
    progress.starts_due.remember(task.cues);
    progress.forks.strike_met(task, progress.recalls, day);
  }
  if (task.drill == Drill::run_through) {
    ++progress.runs_made;
    if (progress.last_run_made < day) ++progress.run_days_made;
    progress.last_run_made = day;
  }
  if (facts.stage != Stage::temper) return;
  if (slipped_since(task, day))
    progress.temper.relax(task.chunks.front(), task.drill);
  else
    progress.temper.strike(task.chunks.front(), task.drill);
}

bool Draft::slipped_since(const Task& task, int day) const {
  const auto& chunk = work.analyses[task.piece].planned.chunks[task.chunks.front()];
  return chunk.raised && chunk.last_slip && work.index_of(*chunk.last_slip) >= day;
}

void Draft::put(Task task, int day) {
  room[day] -= task.minutes;
  pieces[task.piece]->return_seams.played(task, day);
  schedule.days[day].tasks.push_back(std::move(task));
}

void Draft::miss(const Task& task, Why why) {
  if (lets_go_) return let_go(task, why);
  schedule.unplaced.push_back({task.piece, task.drill, task.bars, task.minutes, why});
}

void Draft::let_go(const Task& task, Why why) {
  schedule.let_go.push_back({task.piece, task.drill, task.bars, task.minutes, why});
}

bool Draft::stands_apart(const Task& task, int day) const {
  const auto& tasks = schedule.days[day].tasks;
  return tasks.empty() || std::any_of(tasks.begin(), tasks.end(), [&](const Task& other) {
           return !same_passage(other, task);
         });
}

bool Draft::is_welcome(Drill drill, int day) const {
  return end - day > work.terms.method.quiet_days || facts_of(drill).last_days == LastDays::welcome;
}

void Draft::drill_forks(PieceProgress& progress, int day) {
  for (auto fork = progress.forks.begin(); fork != progress.forks.end();) {
    const auto place = fork++;
    if (place->drills > 0 || !place->fork->required) continue;
    Task task = ForksDue::task(*place->fork, progress.make);
    if (task.minutes > room[day] || !ForksDue::ready(*place->fork, progress.recalls, day)) continue;
    progress.recalls.retrieve(task, day);
    put(std::move(task), day);
    progress.forks.drilled(place, day);
  }
}

void Draft::temper(int position) {
  const int day = practice_days[position];
  for (std::size_t piece = 0; piece < pieces.size(); ++piece) {
    PieceProgress& progress = *pieces[piece];
    const TemperRoom of_day{std::min(room[day], temper_left(static_cast<int>(piece), day)),
                            !schedule.days[day].tasks.empty(),
                            full_share() * schedule.days[day].allowance};
    for (Task& task : progress.temper.take(position, practice_days, end, progress.recalls,
                                           progress.make, of_day))
      put(std::move(task), day);
  }
}

// So many minutes more until spoken and written work has its share of all that is set so far.
double Draft::temper_left(int piece, int until) const {
  const double share = work.terms.method.temper_share;
  double temper = 0;
  double all = 0;
  for (int day = 0; day <= until; ++day)
    for (const Task& task : schedule.days[day].tasks)
      if (task.piece == piece) {
        all += task.minutes;
        if (stage_of(task.drill) == Stage::temper) temper += task.minutes;
      }
  return std::max(0.0, (share * all - temper) / (1 - share));
}

void Draft::set_aside(PieceProgress& progress, RunDays runs) {
  progress.runs = std::move(runs);
  const double minutes = progress.analysis.time.run_through();
  for (int day = 0; day < end; ++day) {
    if (progress.runs.runs[day] == 0) continue;
    room[day] = progress.runs.alone ? 0 : room[day] - progress.runs.runs[day] * minutes;
    if (progress.runs.alone) schedule.days[day].note = DayNote::run_alone;
  }
}

void Draft::place_runs(int day) {
  for (auto& progress : pieces) {
    if (progress->runs.runs[day] == 0 || !progress->recalls.everything_learned()) continue;
    for (int run = 0; run < progress->runs.runs[day]; ++run) {
      Task task = progress->make.run_through();
      task.reason = run_reason(*progress, day);
      ++progress->runs_made;
      progress->recalls.retrieve(task, day);
      schedule.days[day].tasks.push_back(std::move(task));
    }
  }
}

Reason Draft::run_reason(const PieceProgress& progress, int on) const {
  std::vector<int> days_left;
  std::size_t run = 0;
  for (int day = 0; day < end; ++day) {
    if (progress.runs.runs[day] == 0) continue;
    if (day < on) ++run;
    days_left.push_back(end - day);
  }
  // While a piece is kept only the last run-throughs count for its date.
  const auto asked = static_cast<std::size_t>(work.terms.runs_required());
  if (const std::size_t all = days_left.size(); work.terms.upkeep && all > asked) {
    if (run < all - asked) return Reason::whole;
    run -= all - asked;
    days_left.erase(days_left.begin(), days_left.end() - static_cast<std::ptrdiff_t>(asked));
  }
  return witnessed_runs(days_left, work.terms.method.listener_days)[run];
}

void Draft::finish(int index) {
  Day& day = schedule.days[index];
  if (work.effort) {
    work.effort->spend(kTaskEffort * static_cast<double>(day.tasks.size()));
    for (const Analysis& analysis : work.analyses)
      work.effort->spend(static_cast<double>(analysis.planned.chunks.size()));
  }
  put_in_order(day,
               [&](const Task& task) { return work.analyses[task.piece].level_in(task.bars); });
  std::vector<const Piece*> played;
  for (const Analysis& analysis : work.analyses) played.push_back(&analysis.planned.piece);
  count_in_one_beat(day.tasks, played);
  divide_into_sittings(day, work.terms.blocks, work.terms.method.break_after);
  if (day.note != DayNote::none) return;
  const bool all_learned = std::all_of(pieces.begin(), pieces.end(), [](const auto& progress) {
    return progress->recalls.everything_learned();
  });
  const bool today = std::any_of(pieces.begin(), pieces.end(), [&](const auto& progress) {
    return progress->recalls.last_learning_day() == index;
  });
  if (all_learned && today) day.note = DayNote::everything_learned;
  if (index == practice_days.back()) day.note = DayNote::last_day;
}

void Draft::collect_unplaced(bool runs) {
  for (const auto& progress : pieces) {
    const auto& chunks = progress->analysis.planned.chunks;
    for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk) {
      if (!progress->recalls.learned(chunk))
        miss(progress->make.learn(chunk), Why::no_room_to_learn);
      else if (!progress->recalls.holds_to_the_end(chunk))
        miss(progress->make.recall(chunks[chunk].bars), Why::no_room_to_recall);
    }
    for (const BarRange& bars : progress->joins.left_over())
      miss(progress->make.join(bars), Why::no_room_to_join);
    for (const Task& task : progress->forks.left_over(progress->make))
      miss(task, Why::no_room_to_prove);
    for (const Task& task : progress->temper.left_over(progress->make))
      let_go(task, Why::no_room_to_temper);
    const int runs_missing = runs && progress->recalls.everything_learned()
                                 ? progress->runs.missing
                                 : progress->runs_to_come(work.terms);
    for (int run = 0; run < runs_missing; ++run)
      miss(progress->make.run_through(), Why::no_room_to_run);
  }
}

}  // namespace cahier
