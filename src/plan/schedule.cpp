#include "plan/schedule.h"

#include <algorithm>
#include <memory>
#include <optional>

#include "plan/day_order.h"
#include "plan/desk.h"
#include "plan/quota.h"

namespace cahier {
namespace {

constexpr double kWorthwhile = 2;  // minutes

class Layout {
 public:
  Layout(const Work& work, const Pace& pace)
      : work_(work),
        method_(work.terms.method),
        pace_(pace),
        end_(static_cast<int>(work.days.size())) {
    draft_.days = work.days;
    for (int day = 0; day < end_; ++day) {
      room_.push_back(draft_.days[day].allowance);
      if (room_.back() > 0) practice_days_.push_back(day);
    }
    for (int piece = 0; piece < static_cast<int>(work.anatomies.size()); ++piece)
      desks_.push_back(
          std::make_unique<Desk>(work.anatomies[piece], work.terms, piece, practice_days_, end_));
  }

  Draft run() {
    set_runs_aside();
    const Quota quota(work_, pace_, practice_days_, room_);
    for (int position = 0; position < static_cast<int>(practice_days_.size()); ++position) {
      const int day = practice_days_[position];
      if (draft_.days[day].note == DayNote::run_alone) {
        place_runs(day);
        continue;
      }
      if (quota.rests_on(day)) draft_.days[day].note = DayNote::catch_up;
      std::vector<Wanted> wanted = wants_on(position);
      recall(wanted, day, next_learning_minutes(day));
      learn(quota, day);
      join_what_is_learned(day);
      recall(wanted, day, 0);
      note_missed(wanted);
      pass_once(day);
      prove(position);
      fill_crumbs(day);
      place_runs(day);
      finish(draft_.days[day], day);
    }
    collect_unplaced();
    return std::move(draft_);
  }

 private:
  struct Wanted {
    int piece;
    Want want;
    bool done = false;
  };

  void set_runs_aside() {
    if (!pace_.runs) {
      for (auto& desk : desks_) desk->runs.runs.assign(end_, 0);
      return;
    }
    for (auto& desk : desks_) {
      const double minutes = desk->anatomy.time.run_through();
      desk->runs = choose_run_days(method_, draft_.days, room_, pace_.learn_until + 1,
                                   work_.terms.runs_required(), minutes);
      for (int day = 0; day < end_; ++day) {
        if (desk->runs.runs[day] == 0) continue;
        room_[day] = desk->runs.alone ? 0 : room_[day] - desk->runs.runs[day] * minutes;
        if (desk->runs.alone) draft_.days[day].note = DayNote::run_alone;
      }
    }
  }

  std::vector<Wanted> wants_on(int position) const {
    const int day = practice_days_[position];
    std::vector<Wanted> all;
    for (int piece = 0; piece < static_cast<int>(desks_.size()); ++piece) {
      const Desk& desk = *desks_[piece];
      if (desk.runs.runs[day] > 0) continue;
      for (Want& want : desk.memory.wants(position, desk.next_run(day)))
        all.push_back({piece, std::move(want)});
    }
    std::stable_sort(all.begin(), all.end(), [](const Wanted& a, const Wanted& b) {
      if (a.want.must != b.want.must) return a.want.must;
      if (a.want.first != b.want.first) return a.want.first;
      return a.want.ripeness > b.want.ripeness;
    });
    return all;
  }

  // The kind of recall: whole stretches are passed through slowly, then counting, then recalled at
  // a nearer tempo, in turn; whatever is left of the day decides between them.
  Task recall_task(const Desk& desk, const Want& want, int day, double room) const {
    if (want.whole) {
      const int turn = desk.passes[want.stretch] % 3;
      Task task = turn == 0   ? desk.make.slow_pass(want.bars)
                  : turn == 1 ? desk.make.counted_pass(want.bars)
                              : desk.make.recall(want.bars, desk.memory.progress(want.chunks, day));
      if (task.minutes <= room) return task;
    }
    return desk.make.recall(want.bars, desk.memory.progress(want.chunks, day));
  }

  // Recalls what is wanted, as far as the day reaches; what can wait leaves `kept` minutes free.
  void recall(std::vector<Wanted>& wanted, int day, double kept) {
    for (Wanted& one : wanted) {
      if (one.done) continue;
      Desk& desk = *desks_[one.piece];
      const bool pressing = one.want.must || one.want.first || one.want.ripeness >= 1.5;
      const double room = room_[day] - (pressing ? 0 : kept);
      Task task = recall_task(desk, one.want, day, room);
      if (task.minutes > room) continue;
      task.reason = one.want.first  ? Reason::first_night
                    : one.want.must ? Reason::last_chance
                                    : Reason::best_gap;
      task.reason_number = end_ - day;
      if (one.want.whole) ++desk.passes[one.want.stretch];
      desk.memory.retrieve(task.chunks, day);
      desk.joins.played(task);
      put(std::move(task), day);
      one.done = true;
    }
  }

  void note_missed(const std::vector<Wanted>& wanted) {
    for (const Wanted& one : wanted)
      if (one.want.must && !one.done)
        miss(desks_[one.piece]->make.recall(one.want.bars), Why::no_room_to_recall);
  }

  // Once everything is learned, each stretch has one slow and one counted pass behind it even when
  // the date leaves no time for its recalls to come round.
  void pass_once(int day) {
    if (day == practice_days_.back()) return;
    for (auto& owned : desks_) {
      Desk& desk = *owned;
      if (!desk.memory.everything_learned() || desk.runs.runs[day] > 0) continue;
      for (int index = 0; index < static_cast<int>(desk.passes.size()); ++index) {
        const Stretch& stretch = desk.anatomy.stretches[index];
        if (desk.passes[index] >= 2 || !desk.memory.ripe_enough(stretch.chunks(), day)) continue;
        Task task = desk.passes[index] == 0 ? desk.make.slow_pass(stretch.bars)
                                            : desk.make.counted_pass(stretch.bars);
        if (task.minutes > room_[day]) continue;
        task.reason = Reason::whole;
        ++desk.passes[index];
        desk.memory.retrieve(task.chunks, day);
        desk.joins.played(task);
        put(std::move(task), day);
      }
    }
  }

  double next_learning_minutes(int day) const {
    if (day > pace_.learn_until || next_ >= pace_.chunks) return 0;
    const Work::Item& item = work_.order[next_];
    return desks_[item.piece]->anatomy.learn_minutes[item.chunk] + 1;
  }

  void learn(const Quota& quota, int day) {
    while (next_ < pace_.chunks && quota.may_learn(day, learned_minutes_, next_)) {
      const Work::Item item = work_.order[next_];
      Desk& desk = *desks_[item.piece];
      const auto& rivals = desk.anatomy.rivals[item.chunk];
      const bool rival_today = std::any_of(rivals.begin(), rivals.end(), [&](int rival) {
        return desk.memory.learned(rival) && !desk.memory.learned_before(rival, day);
      });
      Task task = desk.make.learn(item.chunk);
      if (rival_today || task.minutes > room_[day]) break;
      task.reason = Reason::new_material;
      learned_minutes_ += task.minutes;
      desk.memory.learn(item.chunk, day);
      desk.joins.learned(item.chunk, desk.memory);
      put(std::move(task), day);
      ++next_;
    }
  }

  void join_what_is_learned(int day) {
    for (auto& desk : desks_)
      for (Task& task : desk->joins.take(desk->memory, desk->make, room_[day]))
        put(std::move(task), day);
  }

  // A day with hardly anything is not worth sitting down for: while the piece is being learned it
  // also has the newest stretch played through slowly, as far as it is learned.
  void fill_crumbs(int day) {
    if (draft_.days[day].tasks.empty() || draft_.days[day].minutes() >= kWorthwhile || next_ == 0)
      return;
    const Work::Item& newest = work_.order[next_ - 1];
    Desk& desk = *desks_[newest.piece];
    if (desk.memory.everything_learned() && desk.memory.last_learning_day() + 1 < day) return;
    const Stretch& stretch = desk.anatomy.stretches[desk.anatomy.stretch_of[newest.chunk]];
    int first = newest.chunk;
    while (first > stretch.first_chunk && desk.memory.learned(first - 1)) --first;
    if (first == newest.chunk) return;
    const auto& chunks = desk.anatomy.planned.chunks;
    Task task = desk.make.join({chunks[first].bars.first, chunks[newest.chunk].bars.last});
    if (task.minutes > room_[day]) return;
    task.reason = Reason::joins_new;
    put(std::move(task), day);
  }

  void prove(int position) {
    const int day = practice_days_[position];
    for (int piece = 0; piece < static_cast<int>(desks_.size()); ++piece) {
      Desk& desk = *desks_[piece];
      const int next_run = desk.next_run(day - 1);
      for (Task& task :
           desk.proof.on_day(position, practice_days_, end_, desk.memory, desk.make, next_run,
                             pace_.temper, room_[day], !draft_.days[day].tasks.empty())) {
        if (retrieves(task.drill)) desk.memory.retrieve(task.chunks, day);
        put(std::move(task), day);
      }
    }
  }

  void place_runs(int day) {
    for (auto& desk : desks_) {
      if (desk->runs.runs[day] == 0 || !desk->memory.everything_learned()) continue;
      for (int run = 0; run < desk->runs.runs[day]; ++run) {
        Task task = desk->make.run_through();
        task.reason = Reason::whole;
        draft_.days[day].tasks.push_back(std::move(task));
      }
      desk->memory.retrieve_all(day);
    }
  }

  void put(Task task, int day) {
    room_[day] -= task.minutes;
    draft_.days[day].tasks.push_back(std::move(task));
  }

  void finish(Day& day, int index) {
    put_in_order(day, work_.terms.blocks);
    if (day.note != DayNote::none) return;
    const bool all_learned = std::all_of(desks_.begin(), desks_.end(), [](const auto& desk) {
      return desk->memory.everything_learned();
    });
    const bool today = std::any_of(desks_.begin(), desks_.end(), [&](const auto& desk) {
      return desk->memory.last_learning_day() == index;
    });
    if (all_learned && today) day.note = DayNote::everything_learned;
    if (index == practice_days_.back()) day.note = DayNote::last_day;
  }

  void collect_unplaced() {
    for (int piece = 0; piece < static_cast<int>(desks_.size()); ++piece) {
      const Desk& desk = *desks_[piece];
      const auto& chunks = desk.anatomy.planned.chunks;
      for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk) {
        if (!desk.memory.learned(chunk))
          miss(desk.make.learn(chunk), Why::no_room_to_learn);
        else if (!desk.memory.holds_to_the_end(chunk))
          miss(desk.make.recall(chunks[chunk].bars), Why::no_room_to_recall);
      }
      for (const BarRange& bars : desk.joins.left_over())
        miss(desk.make.join(bars), Why::no_room_to_join);
      for (Task& task : desk.proof.left_over(desk.make))
        miss(task, stage_of(task.drill) == Stage::temper ? Why::no_room_to_temper
                                                         : Why::no_room_to_prove);
      const int runs_missing = pace_.runs && desk.memory.everything_learned()
                                   ? desk.runs.missing
                                   : work_.terms.runs_required();
      for (int run = 0; run < runs_missing; ++run)
        miss(desk.make.run_through(), Why::no_room_to_run);
    }
  }

  void miss(const Task& task, Why why) {
    draft_.unplaced.push_back({task.piece, task.drill, task.bars, task.minutes, why});
  }

  const Work& work_;
  const Method& method_;
  Pace pace_;
  int end_;
  Draft draft_;
  std::vector<double> room_;  // minutes left, by day
  std::vector<int> practice_days_;
  std::vector<std::unique_ptr<Desk>> desks_;
  int next_ = 0;  // in the order of learning
  double learned_minutes_ = 0;
};

}  // namespace

Draft lay_out(const Work& work, const Pace& pace) { return Layout(work, pace).run(); }

}  // namespace cahier
