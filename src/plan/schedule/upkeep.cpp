#include "plan/schedule/upkeep.h"

#include <algorithm>

#include "plan/due/recall_kinds.h"
#include "plan/schedule/draft.h"
#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

class Upkeep {
 public:
  explicit Upkeep(const Work& work) : work_(work), draft_(work, true) {}

  Schedule run() {
    for (auto& progress : draft_.pieces) set_runs_aside(*progress);
    for (auto& progress : draft_.pieces) {
      progress->recalls.tempo().is_at_tempo();
      sit_down(*progress);
    }
    for (const int day : draft_.practice_days) {
      for (auto& progress : draft_.pieces)
        if (progress->runs.runs[day] > 0) draft_.drill_forks(*progress, day);
      draft_.place_runs(day);
      draft_.finish(day);
    }
    draft_.collect_unplaced(true);
    return std::move(draft_.schedule);
  }

 private:
  void set_runs_aside(PieceProgress& progress) {
    const Method& method = work_.terms.method;
    const double minutes = progress.analysis.time.run_through();
    const int required = work_.terms.runs_required();
    // Run-throughs for this date, whatever was played for the one before.
    progress.runs_made = 0;
    draft_.set_aside(progress,
                     choose_run_days(method, draft_.schedule.days, draft_.room, work_.first,
                                     {required, method.run_days, 0}, minutes, true));
  }

  // The sittings of one piece, up to its first run-through.
  void sit_down(PieceProgress& progress) {
    const Method& method = work_.terms.method;
    const int first_run = progress.next_run(-1);
    const int until = first_run < 0 ? draft_.end : first_run;
    int gap = method.upkeep_gap;
    int last = last_played(progress);
    int turn = 0;
    for (int from = position_from(std::max(last + gap, work_.first)); from < practice_day_count();
         from = position_from(last + gap)) {
      const int day = draft_.practice_days[from];
      const double best = best_gap(method, draft_.end - day);
      if (day >= until || (first_run >= 0 && first_run - day < numbers::kUpkeepBeforeRun * best))
        break;
      ++turn;
      if (turn % method.upkeep_whole_turn != 0 || !play_through(progress, from))
        recall_all(progress, from, turn);
      last = day;
      gap = std::max(1,
                     std::min(gap * method.upkeep_growth, best_gap_days(method, draft_.end - day)));
    }
  }

  // All of it without stopping, where the day holds that.
  bool play_through(PieceProgress& progress, int position) {
    Task task = progress.make.run_through();
    const int day = draft_.practice_days[position];
    if (task.minutes > room_on(progress, position)) return false;
    task.reason = Reason::whole;
    progress.recalls.retrieve(task, day);
    draft_.put(std::move(task), day);
    settle(progress, day, position);
    return true;
  }

  // Everything once, from a practice day on, on as many days as it takes.
  void recall_all(PieceProgress& progress, int position, int turn) {
    for (int index = 0; index < static_cast<int>(progress.analysis.stretches.size()); ++index) {
      const Stretch& stretch = progress.analysis.stretches[index];
      while (position < practice_day_count() &&
             progress.make.recall(stretch.bars).minutes > room_on(progress, position))
        ++position;
      if (position == practice_day_count()) return;
      const int day = draft_.practice_days[position];
      Task task = recall_turn(progress, stretch.bars, stretch.chunks(), turn + index, day,
                              room_on(progress, position));
      task.reason = Reason::best_gap;
      task.reason_number = draft_.end - day;
      progress.recalls.retrieve(task, day);
      progress.joins.played(task);
      draft_.put(std::move(task), day);
    }
    settle(progress, draft_.practice_days[position], position);
  }

  // What room is left goes to joins and forks that wait, to Temper, and to cue starts.
  void settle(PieceProgress& progress, int day, int position) {
    for (Task& task :
         progress.joins.take(progress.recalls, progress.make, draft_.room[day], {day, false}))
      draft_.put(std::move(task), day);
    draft_.drill_forks(progress, day);
    for (auto next = progress.temper.next(progress.recalls, day); next != progress.temper.end();
         next = progress.temper.next(progress.recalls, day)) {
      Task task = TemperDue::task(*next, progress.make);
      if (task.minutes > draft_.room[day]) break;
      draft_.put(std::move(task), day);
      progress.temper.strike(next);
    }
    for (Task& task :
         progress.starts_due.on_day(position, draft_.practice_days, draft_.end, progress.recalls,
                                    progress.make, -1, draft_.room[day], true, 0)) {
      progress.recalls.retrieve(task, day);
      draft_.put(std::move(task), day);
    }
  }

  // The last day of the past on which any of it was played from memory; the day before the plan
  // where none was.
  int last_played(const PieceProgress& progress) const {
    int last = work_.first - 1;
    for (const Day& day : work_.past)
      for (const Task& task : day.tasks)
        if (&progress == draft_.pieces[task.piece].get() && retrieves(task.drill))
          last = work_.index_of(day.date);
    return last;
  }

  int practice_day_count() const { return static_cast<int>(draft_.practice_days.size()); }
  // The place among the practice days of the first from this day on.
  int position_from(int day) const {
    const auto& days = draft_.practice_days;
    return static_cast<int>(std::lower_bound(days.begin(), days.end(), day) - days.begin());
  }
  // A run-through leaves no other turn that day.
  double room_on(const PieceProgress& progress, int position) const {
    const int day = draft_.practice_days[position];
    return progress.runs.runs[day] > 0 ? 0 : draft_.room[day];
  }

  const Work& work_;
  Draft draft_;
};

}  // namespace

Schedule keep_up(const Work& work) { return Upkeep(work).run(); }

}  // namespace cahier
