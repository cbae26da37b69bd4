#include "plan/schedule/comfortable.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "plan/due/growing_runs.h"
#include "plan/due/recall_kinds.h"
#include "plan/schedule/draft.h"
#include "plan/schedule/learning_quota.h"
#include "plan/schedule/thin_days.h"

namespace cahier {
namespace {

constexpr int kJoinWithin = 4;    // days: then a join no longer waits for a better place
constexpr double kOverdue = 1.5;  // best gaps since the last recall
constexpr int kMoreRuns = 2;
constexpr int kWeeksForSecondPasses = 56;    // days from the last new bars to the date
constexpr int kSlowly = 0, kFromMemory = 2;  // turns of recall
constexpr double kPassRipe = 0.25;           // best gaps since the bars were last played
constexpr double kPassAgain = 0.2;           // the same where a day has room
constexpr int kManyTimes = 12;               // passes of each kind over a stretch
constexpr double kFullShare = 0.34;          // of a day's allowance, where work is optional
constexpr double kLightShare = 0.5;          // of the last day's allowance

class Layout {
 public:
  Layout(const Work& work, const Pace& pace)
      : work_(work), method_(work.terms.method), pace_(pace), draft_(work, pace.eager) {}

  Schedule run() {
    set_runs_aside();
    if (pace_.all_or_nothing && lacks_run()) return std::move(draft_.schedule);
    const LearningQuota quota(work_, pace_, draft_.practice_days, draft_.room);
    bool learning_is_over = false;
    for (int position = 0; position < static_cast<int>(draft_.practice_days.size()); ++position) {
      const int day = draft_.practice_days[position];
      if (pace_.all_or_nothing && (!draft_.schedule.unplaced.empty() || too_late_to_learn(day)))
        return std::move(draft_.schedule);
      if (day > pace_.learn_until && !std::exchange(learning_is_over, true)) give_runs_back();
      if (day_of(day).note == DayNote::run_alone) {
        draft_.place_runs(day);
        continue;
      }
      if (quota.rests_on(day)) day_of(day).note = DayNote::catch_up;
      keep_light(day);
      play_reserved(day);
      std::vector<Wanted> wanted = wants_on(position);
      if (quota.rests_on(day) && everything_learned()) {
        catch_up(wanted, day);
        continue;
      }
      recall(wanted, day, next_learning_minutes(day));
      learn(quota, day);
      recall_sooner(day);
      play_sections(day);
      pass(day);
      join_what_is_learned(day);
      recall(wanted, day, 0);
      note_missed(wanted);
      prove(position);
      if (is_welcome(Drill::join, day)) thin_days_.fill(draft_, day);
      fill_up(day);
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

  void set_runs_aside() {
    if (!pace_.runs) {
      for (auto& progress : draft_.pieces) progress->runs.runs.assign(draft_.end, 0);
      return;
    }
    for (auto& progress : draft_.pieces) {
      const double minutes = progress->analysis.time.run_through();
      const RunsAsked asked = runs_asked(*progress);
      std::optional<RunDays> growing;
      if (pace_.more_runs)
        growing = choose_growing_runs(draft_.schedule.days, draft_.room, learned_by(*progress),
                                      asked, minutes);
      draft_.set_aside(*progress, growing ? *growing
                                          : choose_run_days(method_, draft_.schedule.days,
                                                            draft_.room, pace_.learn_until + 1,
                                                            asked, minutes, pace_.catch_up));
    }
    for (auto& progress : draft_.pieces) progress->recalls.be_at_tempo_by(progress->next_run(-1));
    if (!pace_.catch_up) return;
    for (auto& progress : draft_.pieces)
      if (const int first_run = progress->next_run(-1); first_run >= 0)
        progress->reserved = reserve_longer_stretches(progress->analysis, progress->make, method_,
                                                      draft_.room, pace_.learn_until, first_run);
  }

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

  // The day on which the last chunk of a piece is learned, when each day takes its even share.
  int learned_by(const PieceProgress& progress) const {
    std::vector<int> learning_days;
    for (const int day : draft_.practice_days)
      if (day <= pace_.learn_until) learning_days.push_back(day);
    double before = 0;  // minutes of learning, up to the piece's last chunk
    double all = 0;     // up to the last chunk of all
    for (int i = 0; i + 1 < pace_.chunks; ++i) {
      const Work::Item& item = work_.order[i];
      all += work_.analyses[item.piece].learn_minutes[item.chunk];
      if (&progress == draft_.pieces[work_.order[i + 1].piece].get()) before = all;
    }
    if (learning_days.empty() || all <= 0) return pace_.learn_until;
    const double share = before / all * static_cast<double>(learning_days.size() - 1);
    return learning_days[static_cast<std::size_t>(std::ceil(share))];
  }

  // One who has made them all plays it through twice more before the date, where there is room.
  RunsAsked runs_asked(const PieceProgress& progress) const {
    RunsAsked asked = progress.runs_asked(work_.terms);
    asked.more = std::max(0, kMoreRuns - asked.runs);
    return asked;
  }

  // A piece that is not learned by the last day of learning has no run-throughs: their days are
  // free for recalls.
  void give_runs_back() {
    for (auto& progress : draft_.pieces) {
      if (progress->recalls.everything_learned()) continue;
      const double minutes = progress->analysis.time.run_through();
      for (int day = 0; day < draft_.end; ++day) {
        const int runs = std::exchange(progress->runs.runs[day], 0);
        if (runs == 0) continue;
        draft_.room[day] =
            progress->runs.alone ? day_of(day).allowance : draft_.room[day] + runs * minutes;
        if (progress->runs.alone) day_of(day).note = DayNote::none;
      }
    }
  }

  // Whether a day may hold a drill that could also wait.
  bool is_welcome(Drill drill, int day) const {
    return draft_.end - day > method_.quiet_days || facts_of(drill).last_days == LastDays::welcome;
  }

  // The last day before the date is a light one, where the date leaves the choice.
  void keep_light(int day) {
    if (!pace_.catch_up || day != draft_.practice_days.back()) return;
    const double used = day_of(day).allowance - draft_.room[day];
    draft_.room[day] =
        std::clamp(kLightShare * day_of(day).allowance - used, 0.0, draft_.room[day]);
  }

  void play_reserved(int day) {
    for (auto& progress : draft_.pieces)
      for (const ReservedRecall& one : progress->reserved) {
        if (one.day != day) continue;
        draft_.room[day] += one.minutes;
        if (!progress->recalls.everything_learned()) continue;
        Task task = progress->make.recall(one.bars);
        task = progress->make.recall(one.bars, progress->recalls.tempo_progress(task.chunks, day));
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
        if (!pace_.catch_up || want.must || want.first || is_welcome(Drill::recall, day))
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
      const bool pressing = one.want.must || one.want.first || one.want.ripeness >= kOverdue;
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

  // Only what cannot wait.
  void catch_up(std::vector<Wanted>& wanted, int day) {
    std::erase_if(wanted, [](const Wanted& one) {
      return !one.want.must && !one.want.first && one.want.ripeness < kOverdue;
    });
    recall(wanted, day, 0);
    note_missed(wanted);
    thin_days_.fill(draft_, day);
    fill_up(day);
    draft_.place_runs(day);
    draft_.finish(day);
  }

  // Once everything is learned, a day that has work has more of it rather than crumbs: what is
  // weak, then further passes. Fewer and fuller days follow, since what is played now need not be
  // played tomorrow.
  void fill_up(int day) {
    if (!pace_.catch_up || !everything_learned() || !is_welcome(Drill::slow_pass, day)) return;
    const auto used = [&] { return day_of(day).allowance - draft_.room[day]; };
    const double full = kFullShare * day_of(day).allowance;
    if (used() <= 0) return;
    for (auto& progress : draft_.pieces)
      for (const Want& want : progress->recalls.weak_on(day)) {
        if (used() >= full) return;
        Task task = recall_turn(*progress, want.bars, want.chunks,
                                progress->weak_turns % 2 == 0 ? kSlowly : kFromMemory, day,
                                draft_.room[day]);
        if (task.minutes > draft_.room[day]) continue;
        task.reason = Reason::slips;
        ++progress->weak_turns;
        progress->played(task, day);
        draft_.put(std::move(task), day);
      }
    for (auto& progress : draft_.pieces) {
      // Where something slips, the minutes are its own.
      if (progress->slips()) continue;
      for (Task& task : progress->passes_due.on_day(progress->recalls, progress->make, day,
                                                    kManyTimes, kPassAgain)) {
        if (used() >= full) return;
        if (task.minutes > draft_.room[day]) continue;
        task.reason = Reason::worthwhile;
        progress->played(task, day);
        draft_.put(std::move(task), day);
      }
    }
  }

  void note_missed(const std::vector<Wanted>& wanted) {
    for (const Wanted& one : wanted)
      if (one.want.must && !one.done)
        draft_.miss(draft_.pieces[one.piece]->make.recall(one.want.bars), Why::no_room_to_recall);
  }

  // What is new until it came back three times, and hard bars: sooner than the best gap asks.
  void recall_sooner(int day) {
    for (auto& owned : draft_.pieces) {
      PieceProgress& progress = *owned;
      if (progress.runs.runs[day] > 0 || !is_welcome(Drill::recall, day)) continue;
      for (const Want& want : progress.recalls.wants_sooner(day)) {
        Task task =
            progress.make.recall(want.bars, progress.recalls.tempo_progress(want.chunks, day));
        if (task.minutes > draft_.room[day] - next_learning_minutes(day)) continue;
        task.reason = Reason::best_gap;
        task.reason_number = draft_.end - day;
        progress.played(task, day);
        draft_.put(std::move(task), day);
      }
    }
  }

  // Each section whole, soon after it is learned.
  void play_sections(int day) {
    for (auto& progress : draft_.pieces) {
      if (progress->runs.runs[day] > 0) continue;
      for (const BarRange& part : progress->sections.on_day(progress->recalls, day)) {
        Task task = progress->make.recall(part);
        task = progress->make.recall(part, progress->recalls.tempo_progress(task.chunks, day));
        const bool presses = progress->sections.presses(part, progress->recalls, day);
        if (task.minutes > draft_.room[day] - (presses ? 0 : next_learning_minutes(day))) continue;
        task.reason = Reason::section;
        progress->played(task, day);
        draft_.put(std::move(task), day);
      }
    }
  }

  // Once everything is learned, each stretch has slow and counted passes behind it even when the
  // date leaves no time for its recalls to come round: two of each where there are weeks for them.
  void pass(int day) {
    if (!is_welcome(Drill::slow_pass, day)) return;
    for (auto& owned : draft_.pieces) {
      PieceProgress& progress = *owned;
      if (!progress.recalls.everything_learned()) continue;
      const bool weeks_left =
          draft_.end - progress.recalls.last_learning_day() >= kWeeksForSecondPasses;
      for (Task& task : progress.passes_due.on_day(progress.recalls, progress.make, day,
                                                   weeks_left ? 2 : 1, kPassRipe)) {
        if (task.minutes > draft_.room[day]) continue;
        progress.played(task, day);
        draft_.put(std::move(task), day);
      }
    }
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
      take(*progress, {pace_.eager ? day : day - kJoinWithin});
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
               set_aside, pace_.temper, draft_.room[day], !day_of(day).tasks.empty(),
               kFullShare * day_of(day).allowance - day_of(day).minutes())) {
        if (retrieves(task.drill)) progress.recalls.retrieve(task, day);
        draft_.put(std::move(task), day);
      }
    }
  }

  Day& day_of(int day) { return draft_.schedule.days[day]; }

  const Work& work_;
  const Method& method_;
  Pace pace_;
  Draft draft_;
  int next_ = 0;  // in the order of learning
  double learned_minutes_ = 0;
  ThinDays thin_days_;
};

}  // namespace

Schedule lay_out(const Work& work, const Pace& pace) { return Layout(work, pace).run(); }

}  // namespace cahier
