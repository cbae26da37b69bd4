#include "plan/schedule/comfortable.h"

#include <algorithm>
#include <utility>

#include "plan/due/recall_kinds.h"
#include "plan/schedule/draft.h"
#include "plan/schedule/learning_quota.h"
#include "plan/schedule/runs_aside.h"
#include "plan/schedule/thin_days.h"
#include "plan/schedule/welcome_work.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

class Layout {
 public:
  Layout(const Work& work, const Pace& pace)
      : work_(work), pace_(pace), draft_(work, pace.eager, pace.last_days) {}

  Schedule run() {
    set_runs_aside(draft_, pace_);
    if (pace_.all_or_nothing && lacks_run()) return std::move(draft_.schedule);
    const LearningQuota quota(work_, pace_, draft_.practice_days, draft_.room);
    bool learning_is_over = false;
    for (int position = 0; position < static_cast<int>(draft_.practice_days.size()); ++position) {
      const int day = draft_.practice_days[position];
      if (pace_.all_or_nothing && (!draft_.schedule.unplaced.empty() || too_late_to_learn(day)))
        return std::move(draft_.schedule);
      if (day > pace_.learn_until && !std::exchange(learning_is_over, true)) give_runs_back(draft_);
      if (day_of(day).note == DayNote::run_alone) {
        draft_.place_runs(day);
        continue;
      }
      if (quota.rests_on(day)) day_of(day).note = DayNote::catch_up;
      keep_light(day);
      play_reserved(day);
      std::vector<Wanted> wanted = wants_on(position);
      if (can_stay_free(position, wanted)) continue;
      if (quota.rests_on(day) && everything_learned()) {
        catch_up(wanted, day);
        continue;
      }
      recall(wanted, day, next_learning_minutes(day));
      learn(quota, day);
      join_what_is_learned(day);
      more_.play_sections(day, WelcomeWork::Sections::that_press);
      more_.recall_sooner(day);
      more_.play_sections(day);
      more_.pass(day);
      recall(wanted, day, 0);
      note_missed(wanted);
      prove(position);
      more_.recall_hard(day);
      more_.join_returns(day);
      if (draft_.is_welcome(Drill::join, day)) thin_days_.fill(draft_, day);
      if (pace_.catch_up && everything_learned()) more_.fill_up(day);
      if (pace_.temper) draft_.temper(position);
      more_.play_silently(day);
      draft_.place_runs(day);
      draft_.finish(day);
    }
    draft_.collect_unplaced(pace_.runs);
    return std::move(draft_.schedule);
  }

 private:
  struct Wanted {
    int piece;
    Want want;
    bool done = false;
  };

  // Whether a run-through has no day that could hold it; names it.
  bool lacks_run() {
    for (auto& progress : draft_.pieces) {
      if (progress->runs.missing == 0) continue;
      draft_.miss(progress->make.run_through(), Why::no_room_to_run);
      return true;
    }
    return false;
  }

  // Whether chunks wait after the last day of learning; names the first of them.
  bool too_late_to_learn(int day) {
    if (day <= pace_.learn_until || next_ >= pace_.chunks) return false;
    const Work::Item& item = work_.order[next_];
    draft_.miss(draft_.pieces[item.piece]->make.learn(item.chunk), Why::no_room_to_learn);
    return true;
  }

  // The last day before the date is a light one, where the date leaves the choice.
  void keep_light(int day) {
    if (!pace_.catch_up || day != draft_.practice_days.back()) return;
    const double used = day_of(day).allowance - draft_.room[day];
    draft_.room[day] =
        std::clamp(numbers::kLightShare * day_of(day).allowance - used, 0.0, draft_.room[day]);
  }

  void play_reserved(int day) {
    for (auto& progress : draft_.pieces)
      for (const ReservedRecall& one : progress->reserved) {
        if (one.day != day) continue;
        draft_.room[day] += one.minutes;
        if (!progress->recalls.everything_learned()) continue;
        const std::vector<int> chunks = progress->analysis.chunks_in(one.bars);
        Task task = progress->make.recall(one.bars, progress->recalls.tempo_progress(chunks, day));
        task.reason = one.reason;
        progress->played(task, day);
        draft_.put(std::move(task), day);
      }
  }

  std::vector<Wanted> wants_on(int position) const {
    const int day = draft_.practice_days[position];
    std::vector<Wanted> all;
    for (int piece = 0; piece < static_cast<int>(draft_.pieces.size()); ++piece) {
      const PieceProgress& progress = *draft_.pieces[piece];
      if (progress.runs.runs[day] > 0) continue;
      for (Want& want : progress.recalls.wants(position, progress.next_played(day)))
        // On the last days a recall that can wait leaves room to the run-throughs.
        if (!pace_.catch_up || want.must || want.first || draft_.is_welcome(Drill::recall, day))
          all.push_back({piece, std::move(want)});
    }
    std::stable_sort(all.begin(), all.end(), [](const Wanted& a, const Wanted& b) {
      if (a.want.must != b.want.must) return a.want.must;
      if (a.want.first != b.want.first) return a.want.first;
      return a.want.ripeness > b.want.ripeness;
    });
    return all;
  }

  // Whole stretches are recalled in every kind of turn; what slips, slowly every other time.
  Task recall_task(const PieceProgress& progress, const Want& want, int day, double room) const {
    const int turn = want.whole                                  ? progress.passes[want.stretch]
                     : want.weak && progress.weak_turns % 2 == 0 ? kSlowly
                                                                 : kFromMemory;
    return recall_turn(progress, want.bars, want.chunks, turn, day, room);
  }

  // Recalls what is wanted, as far as the day reaches; what can wait leaves `kept` minutes free.
  void recall(std::vector<Wanted>& wanted, int day, double kept) {
    for (Wanted& one : wanted) {
      if (one.done) continue;
      PieceProgress& progress = *draft_.pieces[one.piece];
      const bool pressing =
          one.want.must || one.want.first || one.want.ripeness >= numbers::kLateGap;
      const double room = draft_.room[day] - (pressing ? 0 : kept);
      Task task = recall_task(progress, one.want, day, room);
      if (task.minutes > room) continue;
      task.reason = one.want.first  ? Reason::first_night
                    : one.want.must ? Reason::last_chance
                    : one.want.weak ? Reason::slips
                                    : Reason::best_gap;
      if (one.want.weak) ++progress.weak_turns;
      task.reason_number = draft_.end - day;
      if (one.want.whole) ++progress.passes[one.want.stretch];
      progress.played(task, day);
      draft_.put(std::move(task), day);
      one.done = true;
    }
  }

  bool everything_learned() const {
    return std::all_of(draft_.pieces.begin(), draft_.pieces.end(),
                       [](const auto& progress) { return progress->recalls.everything_learned(); });
  }

  // Practice days without work just before this one.
  int free_before(int position) const {
    int free = 0;
    while (free < position &&
           draft_.schedule.days[draft_.practice_days[position - 1 - free]].tasks.empty())
      ++free;
    return free;
  }

  bool runs_on(int position) const {
    return position < static_cast<int>(draft_.practice_days.size()) &&
           std::any_of(draft_.pieces.begin(), draft_.pieces.end(), [&](const auto& progress) {
             return progress->runs.runs[draft_.practice_days[position]] > 0;
           });
  }

  // Whether all that the day would hold can wait for the next one, which becomes the fuller for it:
  // two thin days make one that is worth sitting down for.
  bool can_stay_free(int position, const std::vector<Wanted>& wanted) const {
    if (!pace_.catch_up || !everything_learned() || position < 1) return false;
    const int day = draft_.practice_days[position];
    const int most = runs_on(position + 1) ? numbers::kFreeBeforeARun : numbers::kFreeInARow;
    if (free_before(position) >= most) return false;
    if (!draft_.is_welcome(Drill::slow_pass, day)) return false;
    double minutes = draft_.schedule.days[day].allowance - draft_.room[day];
    if (minutes > 0) return false;
    for (const Wanted& one : wanted) {
      if (one.want.must || one.want.first) return false;
      const PieceProgress& progress = *draft_.pieces[one.piece];
      minutes += recall_task(progress, one.want, day, draft_.room[day]).minutes;
    }
    if (minutes >= draft_.full_share() * draft_.schedule.days[day].allowance) return false;
    return std::all_of(draft_.pieces.begin(), draft_.pieces.end(), [&](const auto& progress) {
      return !progress->slips() &&
             !progress->starts_due.has_fork_due(day, draft_.end, progress->recalls) &&
             progress->recalls.wants_sooner(day).empty() &&
             progress->recalls.hard_on(day).empty() &&
             progress->sections.on_day(progress->recalls, day).empty();
    });
  }

  // Only what cannot wait.
  void catch_up(std::vector<Wanted>& wanted, int day) {
    std::erase_if(wanted, [](const Wanted& one) {
      return !one.want.must && !one.want.first && one.want.ripeness < numbers::kLateGap;
    });
    recall(wanted, day, 0);
    note_missed(wanted);
    thin_days_.fill(draft_, day);
    if (everything_learned()) more_.fill_up(day);
    draft_.place_runs(day);
    draft_.finish(day);
  }

  void note_missed(const std::vector<Wanted>& wanted) {
    for (const Wanted& one : wanted)
      if (one.want.must && !one.done)
        draft_.miss(draft_.pieces[one.piece]->make.recall(one.want.bars), Why::no_room_to_recall);
  }

  double next_learning_minutes(int day) const {
    if (day > pace_.learn_until || next_ >= pace_.chunks) return 0;
    const Work::Item& item = work_.order[next_];
    return draft_.pieces[item.piece]->analysis.learn_minutes[item.chunk] + 1;
  }

  void learn(const LearningQuota& quota, int day) {
    for (int today = 0; next_ < pace_.chunks; ++today) {
      if (!quota.may_learn(day, learned_minutes_, next_, today)) break;
      const Work::Item item = work_.order[next_];
      PieceProgress& progress = *draft_.pieces[item.piece];
      const auto& rivals = progress.analysis.rivals[item.chunk];
      const bool rival_today = std::any_of(rivals.begin(), rivals.end(), [&](int rival) {
        return progress.recalls.learned(rival) && !progress.recalls.learned_before(rival, day);
      });
      Task task = progress.make.learn(item.chunk);
      if (rival_today || task.minutes > draft_.room[day]) break;
      task.reason = Reason::new_material;
      learned_minutes_ += task.minutes;
      progress.recalls.learn(item.chunk, day);
      progress.joins.learned(item.chunk, day, progress.recalls);
      draft_.put(std::move(task), day);
      ++next_;
    }
  }

  // A join is played on a later day than its chunks are learned, and where it does not follow a
  // turn on the same bars; but it does not wait long.
  void join_what_is_learned(int day) {
    const auto take = [&](PieceProgress& progress, const JoinsDue::Taking& taking) {
      for (Task& task :
           progress.joins.take(progress.recalls, progress.make, draft_.room[day], taking))
        draft_.put(std::move(task), day);
    };
    for (auto& progress : draft_.pieces) {
      take(*progress, {pace_.eager ? day : day - work_.terms.method.join_days});
      take(*progress,
           {day - 1, true, [&](const Task& join) { return draft_.stands_apart(join, day); }});
    }
  }

  void prove(int position) {
    const int day = draft_.practice_days[position];
    for (int piece = 0; piece < static_cast<int>(draft_.pieces.size()); ++piece) {
      PieceProgress& progress = *draft_.pieces[piece];
      const int set_aside = progress.next_set_aside(day);
      for (Task& task : progress.starts_due.on_day(
               position, draft_.practice_days, draft_.end, progress.recalls, progress.make,
               set_aside, draft_.room[day], !day_of(day).tasks.empty(),
               draft_.full_share() * day_of(day).allowance - day_of(day).minutes())) {
        if (retrieves(task.drill)) progress.recalls.retrieve(task, day);
        draft_.put(std::move(task), day);
      }
    }
  }

  Day& day_of(int day) { return draft_.schedule.days[day]; }

  const Work& work_;
  Pace pace_;
  Draft draft_;
  int next_ = 0;  // in the order of learning
  double learned_minutes_ = 0;
  ThinDays thin_days_;
  WelcomeWork more_{draft_};
};

}  // namespace

Schedule lay_out(const Work& work, const Pace& pace) { return Layout(work, pace).run(); }

}  // namespace cahier
