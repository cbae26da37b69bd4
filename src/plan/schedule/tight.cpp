#include "plan/schedule/tight.h"

#include <algorithm>
#include <list>

#include "plan/schedule/best_fill.h"
#include "plan/schedule/draft.h"

namespace cahier {
namespace {

constexpr double kSoonDue = 1;  // best gaps: worth the room that a day has left
constexpr int kLookAhead = 24;  // chunks tried before their turn

class Squeeze {
 public:
  Squeeze(const Work& work, const Packing& packing)
      : method_(work.terms.method), packing_(packing), ledger_(work, true), mixed_(packing.mix) {
    waiting_.assign(work.order.begin(), work.order.end());
    if (packing.turn == Packing::Turn::backward) waiting_.reverse();
    if (packing.mix != 0) shuffle(work);
  }

  // `runs_from` is the first day that may hold a run-through.
  Draft run(int runs_from) {
    for (auto& desk : ledger_.desks) set_runs_aside(*desk, runs_from);
    for (int position = 0; position < static_cast<int>(ledger_.practice_days.size()); ++position) {
      const int day = ledger_.practice_days[position];
      if (!runs_alone(day)) fill(position, day);
      if (!ledger_.draft.unplaced.empty() || too_late_to_learn(day))
        return std::move(ledger_.draft);
      ledger_.place_runs(day);
      ledger_.finish(day);
    }
    ledger_.collect_unplaced(true);
    return std::move(ledger_.draft);
  }

 private:
  bool runs_alone(int day) const { return ledger_.draft.days[day].note == DayNote::run_alone; }

  void set_runs_aside(Desk& desk, int from) {
    const double minutes = desk.anatomy.time.run_through();
    desk.runs = pack_run_days(method_, ledger_.draft.days, ledger_.room, from,
                              desk.runs_asked(ledger_.work.terms), minutes, packing_.runs);
    for (const int day : ledger_.practice_days) {
      if (desk.runs.runs[day] == 0) continue;
      ledger_.room[day] = desk.runs.alone ? 0 : ledger_.room[day] - desk.runs.runs[day] * minutes;
      if (desk.runs.alone) ledger_.draft.days[day].note = DayNote::run_alone;
    }
  }

  // A number below `count`, from the mix.
  int draw(int count) {
    mixed_ = mixed_ * 1664525u + 1013904223u;  // a linear congruential generator; Knuth, TAOCP 2
    return static_cast<int>((mixed_ >> 16) % static_cast<unsigned>(count));
  }

  void shuffle(const Work& work) {
    std::vector<Work::Item> order = work.order;
    for (int left = static_cast<int>(order.size()); left > 1; --left)
      std::swap(order[left - 1], order[draw(left)]);
    waiting_.assign(order.begin(), order.end());
  }

  void mix_the_day() {
    constexpr Reach kReaches[] = {Reach::unsettled, Reach::ripe, Reach::all, Reach::due};
    packing_.reach = kReaches[draw(4)];
    packing_.recalls_grow = draw(2) == 1;
    packing_.temper_first = draw(2) == 1;
  }

  void fill(int position, int day) {
    if (packing_.mix != 0) mix_the_day();
    const double kept = packing_.recalls_grow ? 0 : next_learning_minutes(day);
    for (auto& desk : ledger_.desks)
      recall(*desk, day, kept, true, [&](int chunk) { return desk->memory.must(chunk, position); });
    if (packing_.temper_first) temper(day);
    learn(day);
    for (auto& desk : ledger_.desks) {
      ledger_.drill_forks(*desk, day);
      recall(*desk, day, 0, false, [&](int chunk) { return desk->memory.waits_for_first(chunk); });
    }
    // While there is something to learn, the recalls to come play most joins.
    for (auto& desk : ledger_.desks)
      if (!packing_.temper_first && desk->memory.everything_learned() &&
          desk->memory.last_learning_day() < day)
        join(*desk, day);
    temper(day);
    for (auto& desk : ledger_.desks) {
      recall(*desk, day, 0, false, [&](int chunk) {
        const bool weak = desk->anatomy.planned.chunks[chunk].raised;
        return desk->memory.ripeness(chunk, day) * (weak ? 2 : 1) >= kSoonDue;
      });
      join(*desk, day);
    }
    if (packing_.starts)
      for (auto& desk : ledger_.desks) start_anywhere(*desk, position, day);
  }

  // What room is left goes to cue starts.
  void start_anywhere(Desk& desk, int position, int day) {
    for (Task& task :
         desk.proof.on_day(position, ledger_.practice_days, ledger_.end, desk.memory, desk.make,
                           desk.next_set_aside(day), false, ledger_.room[day], true)) {
      desk.memory.retrieve(task.chunks, day);
      ledger_.put(std::move(task), day);
    }
  }

  // Whether chunks wait that have no day left; names them as having no room.
  bool too_late_to_learn(int day) {
    for (const Work::Item& item : waiting_) {
      Desk& desk = *ledger_.desks[item.piece];
      const int run = desk.next_run(-1);
      if (ledger_.end - day - 1 > method_.quiet_days && (run < 0 || day + 1 < run)) continue;
      ledger_.miss(desk.make.learn(item.chunk), Why::no_room_to_learn);
      return true;
    }
    return false;
  }

  double next_learning_minutes(int day) const {
    if (waiting_.empty()) return 0;
    const Work::Item& next = waiting_.front();
    const Desk& desk = *ledger_.desks[next.piece];
    return may_learn(desk, next.chunk, day) ? desk.anatomy.learn_minutes[next.chunk] : 0;
  }

  // Recalls the chunks that `due` names among those learned on an earlier day, each together with
  // as many of its neighbours as leave `kept` minutes of the day.
  void recall(Desk& desk, int day, double kept, bool must, const Due& due) {
    if (desk.runs.runs[day] > 0) return;
    const int chunks = static_cast<int>(desk.anatomy.planned.chunks.size());
    for (int chunk = 0; chunk < chunks; ++chunk) {
      if (!desk.memory.learned_before(chunk, day) || !due(chunk)) continue;
      const auto [first, last] = reach_from(desk, chunk, day, ledger_.room[day] - kept, due);
      if (put_recall(desk, first, last, day))
        chunk = last;
      else if (must)
        ledger_.miss(desk.make.recall(desk.anatomy.planned.chunks[chunk].bars),
                     Why::no_room_to_recall);
    }
  }

  // A recall over a join is quicker than the join played slowly.
  void join(Desk& desk, int day) {
    recall_across_joins(desk, day);
    for (Task& task : desk.joins.take(desk.memory, desk.make, ledger_.room[day], {day, false}))
      ledger_.put(std::move(task), day);
  }

  void recall_across_joins(Desk& desk, int day) {
    const int chunks = static_cast<int>(desk.anatomy.planned.chunks.size());
    for (int chunk = 0; chunk + 1 < chunks; ++chunk) {
      if (!desk.memory.learned_before(chunk, day) || !follows(desk, chunk + 1, day)) continue;
      if (!desk.joins.waits(chunk, chunk + 1)) continue;
      const auto none = [](int) { return false; };
      const auto [first, last] = reach_from(desk, chunk, day, ledger_.room[day], none);
      if (last > chunk) put_recall(desk, first, last, day);
    }
  }

  std::pair<int, int> reach_from(const Desk& desk, int chunk, int day, double room,
                                 const Due& due) const {
    return recall_reach(desk, chunk, day, room, packing_.reach, due);
  }

  bool put_recall(Desk& desk, int first, int last, int day) {
    const auto& chunks = desk.anatomy.planned.chunks;
    const BarRange bars{chunks[first].bars.first, chunks[last].bars.last};
    std::vector<int> played;
    for (int chunk = first; chunk <= last; ++chunk) played.push_back(chunk);
    if (recall_minutes(desk, first, last) > ledger_.room[day]) return false;
    Task task = desk.make.recall(bars, desk.memory.progress(played, day));
    task.reason = std::any_of(played.begin(), played.end(),
                              [&](int chunk) { return desk.memory.waits_for_first(chunk); })
                      ? Reason::first_night
                      : Reason::last_chance;
    task.reason_number = ledger_.end - day;
    desk.memory.retrieve(task.chunks, day);
    desk.joins.played(task);
    ledger_.put(std::move(task), day);
    return true;
  }

  bool may_learn(const Desk& desk, int chunk, int day) const {
    if (ledger_.end - day <= method_.quiet_days) return false;
    const int run = desk.next_run(-1);
    if (run >= 0 && day >= run) return false;
    const auto& rivals = desk.anatomy.rivals[chunk];
    return std::none_of(rivals.begin(), rivals.end(), [&](int rival) {
      return desk.memory.learned(rival) && !desk.memory.learned_before(rival, day);
    });
  }

  void learn(int day) {
    if (packing_.turn == Packing::Turn::filling) return learn_what_fills(day);
    while (!waiting_.empty() && learn_one(waiting_.begin(), day)) {
    }
  }

  // Of the next few chunks those that fill the day best.
  void learn_what_fills(int day) {
    std::vector<std::list<Work::Item>::iterator> next;
    std::vector<double> minutes;
    for (auto item = waiting_.begin(); item != waiting_.end(); ++item) {
      const Desk& desk = *ledger_.desks[item->piece];
      if (static_cast<int>(next.size()) == kLookAhead) break;
      if (!may_learn(desk, item->chunk, day)) continue;
      next.push_back(item);
      minutes.push_back(desk.anatomy.learn_minutes[item->chunk]);
    }
    for (const int chosen : best_fill(minutes, ledger_.room[day])) learn_one(next[chosen], day);
  }

  bool learn_one(std::list<Work::Item>::iterator item, int day) {
    Desk& desk = *ledger_.desks[item->piece];
    if (desk.anatomy.learn_minutes[item->chunk] > ledger_.room[day]) return false;
    if (!may_learn(desk, item->chunk, day)) return false;
    Task task = desk.make.learn(item->chunk);
    task.reason = Reason::new_material;
    desk.memory.learn(item->chunk, day);
    desk.joins.learned(item->chunk, day, desk.memory);
    ledger_.put(std::move(task), day);
    waiting_.erase(item);
    return true;
  }

  // Of the weakest that wait, those that fill the day best, until the next weakest find no room.
  void temper(int day) {
    for (auto& desk : ledger_.desks)
      while (true) {
        const auto weakest = desk->temper.weakest(desk->memory, day);
        std::vector<double> minutes;
        for (const auto place : weakest) minutes.push_back(place->minutes);
        const std::vector<int> chosen = best_fill(minutes, ledger_.room[day]);
        if (chosen.empty()) break;
        for (const int one : chosen) {
          ledger_.put(TemperList::task(*weakest[one], desk->make), day);
          desk->temper.strike(weakest[one]);
        }
      }
  }

  const Method& method_;
  Packing packing_;
  Ledger ledger_;
  std::list<Work::Item> waiting_;  // to be learned, in order
  unsigned mixed_;
};

}  // namespace

Draft squeeze(const Work& work, const Packing& packing) {
  if (!is_once_learned(packing.runs)) return Squeeze(work, packing).run(0);
  // When everything is learned shows once the run-throughs are out of the way.
  Packing late = packing;
  late.runs = RunPacking::late;
  Draft draft = Squeeze(work, late).run(0);
  const auto unlearned = [](const Unplaced& one) { return one.why == Why::no_room_to_learn; };
  if (std::any_of(draft.unplaced.begin(), draft.unplaced.end(), unlearned)) return draft;
  int learned = 0;
  for (int day = 0; day < static_cast<int>(draft.days.size()); ++day)
    for (const Task& task : draft.days[day].tasks)
      if (task.drill == Drill::learn) learned = day;
  return Squeeze(work, packing).run(learned + 1);
}

}  // namespace cahier
