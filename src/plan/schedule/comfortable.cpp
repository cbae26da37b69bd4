#include "plan/schedule/comfortable.h"

#include <algorithm>
#include <utility>

#include "plan/due/recall_kinds.h"
#include "plan/schedule/draft.h"
#include "plan/schedule/learning_quota.h"
#include "plan/schedule/thin_days.h"

namespace cahier {
namespace {

constexpr int kJoinWithin = 4;    // days: then a join no longer waits for a better place
constexpr double kOverdue = 1.5;  // best gaps since the last recall
constexpr int kMoreRuns = 2;
constexpr int kSlowly = 0, kFromMemory = 2;  // turns of recall
constexpr double kLightShare = 0.5;          // of the last day's allowance

class Layout {
 public:
  Layout(const Work& work, const Pace& pace)
      : work_(work), method_(work.terms.method), pace_(pace), ledger_(work, pace.eager) {}

  Draft run() {
    set_runs_aside();
    const Quota quota(work_, pace_, ledger_.practice_days, ledger_.room);
    bool learning_is_over = false;
    for (int position = 0; position < static_cast<int>(ledger_.practice_days.size()); ++position) {
      const int day = ledger_.practice_days[position];
      if (day > pace_.learn_until && !std::exchange(learning_is_over, true)) give_runs_back();
      if (day_of(day).note == DayNote::run_alone) {
        ledger_.place_runs(day);
        continue;
      }
      if (quota.rests_on(day)) day_of(day).note = DayNote::catch_up;
      keep_light(day);
      play_bookings(day);
      std::vector<Wanted> wanted = wants_on(position);
      if (quota.rests_on(day) && everything_learned()) {
        catch_up(wanted, day);
        continue;
      }
      recall(wanted, day, next_learning_minutes(day));
      learn(quota, day);
      pass_once(day);
      join_what_is_learned(day);
      recall(wanted, day, 0);
      note_missed(wanted);
      prove(position);
      if (!is_quiet(day)) filler_.fill(ledger_, day);
      ledger_.place_runs(day);
      ledger_.finish(day);
    }
    ledger_.collect_unplaced(pace_.runs);
    return std::move(ledger_.draft);
  }

 private:
  struct Wanted {
    int piece;
    Want want;
    bool done = false;
  };

  void set_runs_aside() {
    if (!pace_.runs) {
      for (auto& desk : ledger_.desks) desk->runs.runs.assign(ledger_.end, 0);
      return;
    }
    for (auto& desk : ledger_.desks) {
      const double minutes = desk->anatomy.time.run_through();
      desk->runs = choose_run_days(method_, ledger_.draft.days, ledger_.room, pace_.learn_until + 1,
                                   runs_asked(*desk), minutes, pace_.catch_up);
      for (int day = 0; day < ledger_.end; ++day) {
        if (desk->runs.runs[day] == 0) continue;
        ledger_.room[day] =
            desk->runs.alone ? 0 : ledger_.room[day] - desk->runs.runs[day] * minutes;
        if (desk->runs.alone) day_of(day).note = DayNote::run_alone;
      }
    }
    if (!pace_.catch_up) return;
    for (auto& desk : ledger_.desks)
      if (const int first_run = desk->next_run(-1); first_run >= 0)
        desk->bookings = book_growth(desk->anatomy, desk->make, method_, ledger_.room,
                                     pace_.learn_until, first_run);
  }

  // One who has made them all plays it through twice more before the date, where there is room.
  RunsAsked runs_asked(const Desk& desk) const {
    RunsAsked asked = desk.runs_asked(work_.terms);
    asked.more = std::max(0, kMoreRuns - asked.runs);
    return asked;
  }

  // A piece that is not learned by the last day of learning has no run-throughs: their days are
  // free for recalls.
  void give_runs_back() {
    for (auto& desk : ledger_.desks) {
      if (desk->memory.everything_learned()) continue;
      const double minutes = desk->anatomy.time.run_through();
      for (int day = 0; day < ledger_.end; ++day) {
        const int runs = std::exchange(desk->runs.runs[day], 0);
        if (runs == 0) continue;
        ledger_.room[day] =
            desk->runs.alone ? day_of(day).allowance : ledger_.room[day] + runs * minutes;
        if (desk->runs.alone) day_of(day).note = DayNote::none;
      }
    }
  }

  bool is_quiet(int day) const { return ledger_.end - day <= method_.quiet_days; }

  // The last day before the date is a light one, where the date leaves the choice.
  void keep_light(int day) {
    if (!pace_.catch_up || day != ledger_.practice_days.back()) return;
    const double used = day_of(day).allowance - ledger_.room[day];
    ledger_.room[day] =
        std::clamp(kLightShare * day_of(day).allowance - used, 0.0, ledger_.room[day]);
  }

  void play_bookings(int day) {
    for (auto& desk : ledger_.desks)
      for (const Booking& booking : desk->bookings) {
        if (booking.day != day) continue;
        ledger_.room[day] += booking.minutes;
        if (!desk->memory.everything_learned()) continue;
        Task task = desk->make.recall(booking.bars);
        task = desk->make.recall(booking.bars, desk->memory.progress(task.chunks, day));
        task.reason = booking.reason;
        desk->memory.retrieve(task.chunks, day);
        desk->joins.played(task);
        ledger_.put(std::move(task), day);
      }
  }

  std::vector<Wanted> wants_on(int position) const {
    const int day = ledger_.practice_days[position];
    std::vector<Wanted> all;
    for (int piece = 0; piece < static_cast<int>(ledger_.desks.size()); ++piece) {
      const Desk& desk = *ledger_.desks[piece];
      if (desk.runs.runs[day] > 0) continue;
      for (Want& want : desk.memory.wants(position, desk.next_played(day)))
        // The last days hold no recall that can wait for the run-throughs.
        if (!pace_.catch_up || want.must || want.first || !is_quiet(day))
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
  Task recall_task(const Desk& desk, const Want& want, int day, double room) const {
    const int turn = want.whole                              ? desk.passes[want.stretch]
                     : want.weak && desk.weak_turns % 2 == 0 ? kSlowly
                                                             : kFromMemory;
    return recall_turn(desk, want.bars, want.chunks, turn, day, room);
  }

  // Recalls what is wanted, as far as the day reaches; what can wait leaves `kept` minutes free.
  void recall(std::vector<Wanted>& wanted, int day, double kept) {
    for (Wanted& one : wanted) {
      if (one.done) continue;
      Desk& desk = *ledger_.desks[one.piece];
      const bool pressing = one.want.must || one.want.first || one.want.ripeness >= kOverdue;
      const double room = ledger_.room[day] - (pressing ? 0 : kept);
      Task task = recall_task(desk, one.want, day, room);
      if (task.minutes > room) continue;
      task.reason = one.want.first  ? Reason::first_night
                    : one.want.must ? Reason::last_chance
                    : one.want.weak ? Reason::slips
                                    : Reason::best_gap;
      if (one.want.weak) ++desk.weak_turns;
      task.reason_number = ledger_.end - day;
      if (one.want.whole) ++desk.passes[one.want.stretch];
      desk.memory.retrieve(task.chunks, day);
      desk.joins.played(task);
      ledger_.put(std::move(task), day);
      one.done = true;
    }
  }

  bool everything_learned() const {
    return std::all_of(ledger_.desks.begin(), ledger_.desks.end(),
                       [](const auto& desk) { return desk->memory.everything_learned(); });
  }

  // Only what cannot wait.
  void catch_up(std::vector<Wanted>& wanted, int day) {
    std::erase_if(wanted, [](const Wanted& one) {
      return !one.want.must && !one.want.first && one.want.ripeness < kOverdue;
    });
    recall(wanted, day, 0);
    note_missed(wanted);
    filler_.fill(ledger_, day);
    ledger_.place_runs(day);
    ledger_.finish(day);
  }

  void note_missed(const std::vector<Wanted>& wanted) {
    for (const Wanted& one : wanted)
      if (one.want.must && !one.done)
        ledger_.miss(ledger_.desks[one.piece]->make.recall(one.want.bars), Why::no_room_to_recall);
  }

  // Once everything is learned, each stretch has one slow and one counted pass behind it even when
  // the date leaves no time for its recalls to come round.
  void pass_once(int day) {
    if (is_quiet(day)) return;
    for (auto& owned : ledger_.desks) {
      Desk& desk = *owned;
      if (!desk.memory.everything_learned() || desk.runs.runs[day] > 0) continue;
      for (int index = 0; index < static_cast<int>(desk.passes.size()); ++index) {
        const Stretch& stretch = desk.anatomy.stretches[index];
        if (desk.passes[index] >= 2 || !desk.memory.ripe_enough(stretch.chunks(), day)) continue;
        Task task = desk.passes[index] == 0 ? desk.make.slow_pass(stretch.bars)
                                            : desk.make.counted_pass(stretch.bars);
        if (task.minutes > ledger_.room[day]) continue;
        task.reason = Reason::whole;
        ++desk.passes[index];
        desk.memory.retrieve(task.chunks, day);
        desk.joins.played(task);
        ledger_.put(std::move(task), day);
      }
    }
  }

  double next_learning_minutes(int day) const {
    if (day > pace_.learn_until || next_ >= pace_.chunks) return 0;
    const Work::Item& item = work_.order[next_];
    return ledger_.desks[item.piece]->anatomy.learn_minutes[item.chunk] + 1;
  }

  void learn(const Quota& quota, int day) {
    while (next_ < pace_.chunks && quota.may_learn(day, learned_minutes_, next_)) {
      const Work::Item item = work_.order[next_];
      Desk& desk = *ledger_.desks[item.piece];
      const auto& rivals = desk.anatomy.rivals[item.chunk];
      const bool rival_today = std::any_of(rivals.begin(), rivals.end(), [&](int rival) {
        return desk.memory.learned(rival) && !desk.memory.learned_before(rival, day);
      });
      Task task = desk.make.learn(item.chunk);
      if (rival_today || task.minutes > ledger_.room[day]) break;
      task.reason = Reason::new_material;
      learned_minutes_ += task.minutes;
      desk.memory.learn(item.chunk, day);
      desk.joins.learned(item.chunk, day, desk.memory);
      ledger_.put(std::move(task), day);
      ++next_;
    }
  }

  // A join is played on a later day than its chunks are learned, and where it does not follow a
  // turn on the same bars; but it does not wait long.
  void join_what_is_learned(int day) {
    const auto take = [&](Desk& desk, const JoinList::Taking& taking) {
      for (Task& task : desk.joins.take(desk.memory, desk.make, ledger_.room[day], taking))
        ledger_.put(std::move(task), day);
    };
    for (auto& desk : ledger_.desks) {
      take(*desk, {pace_.eager ? day : day - kJoinWithin});
      take(*desk,
           {day - 1, true, [&](const Task& join) { return ledger_.stands_apart(join, day); }});
    }
  }

  void prove(int position) {
    const int day = ledger_.practice_days[position];
    for (int piece = 0; piece < static_cast<int>(ledger_.desks.size()); ++piece) {
      Desk& desk = *ledger_.desks[piece];
      const int set_aside = desk.next_set_aside(day);
      for (Task& task : desk.proof.on_day(position, ledger_.practice_days, ledger_.end, desk.memory,
                                          desk.make, set_aside, pace_.temper, ledger_.room[day],
                                          !day_of(day).tasks.empty())) {
        if (retrieves(task.drill)) desk.memory.retrieve(task.chunks, day);
        ledger_.put(std::move(task), day);
      }
    }
  }

  Day& day_of(int day) { return ledger_.draft.days[day]; }

  const Work& work_;
  const Method& method_;
  Pace pace_;
  Ledger ledger_;
  int next_ = 0;  // in the order of learning
  double learned_minutes_ = 0;
  Filler filler_;
};

}  // namespace

Draft lay_out(const Work& work, const Pace& pace) { return Layout(work, pace).run(); }

}  // namespace cahier
