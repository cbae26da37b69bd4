#include "plan/schedule/upkeep.h"

#include <algorithm>

#include "plan/due/recall_kinds.h"
#include "plan/schedule/draft.h"
#include "practice/best_gap.h"

namespace cahier {
namespace {

constexpr int kFirstGap = 3;         // days after the piece was last played
constexpr int kGrowth = 2;           // times the gap before
constexpr int kLearnedBefore = 3;    // days before the last in which anything new is allowed
constexpr int kWholeTurn = 3;        // every third sitting is one run-through
constexpr double kBeforeARun = 0.5;  // best gaps: a sitting so near to a run-through is left out

class Upkeep {
 public:
  explicit Upkeep(const Work& work) : work_(work), ledger_(work, true) {}

  Draft run() {
    for (auto& desk : ledger_.desks) set_runs_aside(*desk);
    for (auto& desk : ledger_.desks) {
      desk->memory.is_at_tempo();
      sit_down(*desk);
    }
    for (const int day : ledger_.practice_days) {
      for (auto& desk : ledger_.desks)
        if (desk->runs.runs[day] > 0) ledger_.drill_forks(*desk, day);
      ledger_.place_runs(day);
      ledger_.finish(day);
    }
    ledger_.collect_unplaced(true);
    return std::move(ledger_.draft);
  }

 private:
  void set_runs_aside(Desk& desk) {
    const Method& method = work_.terms.method;
    const double minutes = desk.anatomy.time.run_through();
    const int required = work_.terms.runs_required();
    // Run-throughs for this date, whatever was played for the one before.
    desk.runs_made = 0;
    desk.runs = choose_run_days(method, ledger_.draft.days, ledger_.room, work_.first,
                                {required, method.run_days, 0}, minutes, true);
    for (const int day : ledger_.practice_days) {
      if (desk.runs.runs[day] == 0) continue;
      ledger_.room[day] = desk.runs.alone ? 0 : ledger_.room[day] - desk.runs.runs[day] * minutes;
      if (desk.runs.alone) ledger_.draft.days[day].note = DayNote::run_alone;
    }
  }

  // The sittings of one piece, up to its first run-through.
  void sit_down(Desk& desk) {
    const int first_run = desk.next_run(-1);
    const int until = first_run < 0 ? ledger_.end : first_run;
    int gap = kFirstGap;
    int last = last_played(desk);
    int turn = 0;
    for (int from = position_from(std::max(last + gap, work_.first)); from < practice_day_count();
         from = position_from(last + gap)) {
      const int day = ledger_.practice_days[from];
      const double best = best_gap(work_.terms.method, ledger_.end - day);
      if (day >= until || (first_run >= 0 && first_run - day < kBeforeARun * best)) break;
      ++turn;
      if (turn % kWholeTurn != 0 || !play_through(desk, from)) recall_all(desk, from, turn);
      last = day;
      gap = std::max(1,
                     std::min(gap * kGrowth, best_gap_days(work_.terms.method, ledger_.end - day)));
    }
  }

  // All of it without stopping, where the day holds that.
  bool play_through(Desk& desk, int position) {
    Task task = desk.make.run_through();
    const int day = ledger_.practice_days[position];
    if (task.minutes > room_on(desk, position)) return false;
    task.reason = Reason::whole;
    desk.memory.retrieve_all(day);
    ledger_.put(std::move(task), day);
    settle(desk, day, position);
    return true;
  }

  // Everything once, from a practice day on, on as many days as it takes.
  void recall_all(Desk& desk, int position, int turn) {
    for (int index = 0; index < static_cast<int>(desk.anatomy.stretches.size()); ++index) {
      const Stretch& stretch = desk.anatomy.stretches[index];
      while (position < practice_day_count() &&
             desk.make.recall(stretch.bars).minutes > room_on(desk, position))
        ++position;
      if (position == practice_day_count()) return;
      const int day = ledger_.practice_days[position];
      Task task = recall_turn(desk, stretch.bars, stretch.chunks(), turn + index, day,
                              room_on(desk, position));
      task.reason = Reason::best_gap;
      task.reason_number = ledger_.end - day;
      desk.memory.retrieve(task.chunks, day);
      desk.joins.played(task);
      ledger_.put(std::move(task), day);
    }
    settle(desk, ledger_.practice_days[position], position);
  }

  // What room is left goes to joins and forks that wait, to Temper, and to cue starts.
  void settle(Desk& desk, int day, int position) {
    for (Task& task : desk.joins.take(desk.memory, desk.make, ledger_.room[day], {day, false}))
      ledger_.put(std::move(task), day);
    ledger_.drill_forks(desk, day);
    for (auto next = desk.temper.next(desk.memory, day); next != desk.temper.end();
         next = desk.temper.next(desk.memory, day)) {
      Task task = TemperList::task(*next, desk.make);
      if (task.minutes > ledger_.room[day]) break;
      ledger_.put(std::move(task), day);
      desk.temper.strike(next);
    }
    for (Task& task : desk.proof.on_day(position, ledger_.practice_days, ledger_.end, desk.memory,
                                        desk.make, -1, false, ledger_.room[day], true)) {
      desk.memory.retrieve(task.chunks, day);
      ledger_.put(std::move(task), day);
    }
  }

  // The last day of the past on which any of it was played from memory; the day before the plan
  // where none was.
  int last_played(const Desk& desk) const {
    int last = work_.first - 1;
    for (const Day& day : work_.past)
      for (const Task& task : day.tasks)
        if (&desk == ledger_.desks[task.piece].get() && retrieves(task.drill))
          last = work_.index_of(day.date);
    return last;
  }

  int practice_day_count() const { return static_cast<int>(ledger_.practice_days.size()); }
  // The place among the practice days of the first from this day on.
  int position_from(int day) const {
    const auto& days = ledger_.practice_days;
    return static_cast<int>(std::lower_bound(days.begin(), days.end(), day) - days.begin());
  }
  // A run-through leaves no other turn that day.
  double room_on(const Desk& desk, int position) const {
    const int day = ledger_.practice_days[position];
    return desk.runs.runs[day] > 0 ? 0 : ledger_.room[day];
  }

  const Work& work_;
  Ledger ledger_;
};

Done done_on(Date date, int piece, Drill drill, BarRange bars) {
  Done done;
  done.date = date;
  done.piece = piece;
  done.drill = drill;
  done.bars = bars;
  return done;
}

}  // namespace

Draft keep_up(const Work& work) { return Upkeep(work).run(); }

std::vector<Done> taken_as_done(const Piece& piece, int index, const Method& method, Date from,
                                const std::vector<BarRange>& unlearned) {
  const Date performed = from - days{1};
  int bars = 0;
  for (const BarRange& missing : unlearned) bars += missing.size();
  int all = 0;
  for (int bar = piece.first_bar(); bar <= piece.bars; ++bar)
    if (piece.learned_bar(bar) == bar) ++all;
  std::vector<Done> taken;
  const bool nothing_known = bars == all;
  const Date learned =
      nothing_known ? performed - days{method.quiet_days + kLearnedBefore} : performed;
  for (const BarRange& missing : unlearned)
    taken.push_back(done_on(learned, index, Drill::learn, missing));
  if (!nothing_known) return taken;
  for (const Drill drill : {Drill::recall, Drill::spoken_part, Drill::write_out})
    taken.push_back(done_on(performed - days{1}, index, drill, piece.whole()));
  taken.push_back(done_on(performed, index, Drill::run_through, piece.whole()));
  return taken;
}

Record as_kept(Record record, const std::vector<Piece>& pieces, const Method& method, Date from) {
  for (int index = 0; index < static_cast<int>(pieces.size()); ++index) {
    const std::vector<BarRange> missing =
        History(record, index, pieces[index]).unlearned(pieces[index]);
    for (const Done& done : taken_as_done(pieces[index], index, method, from, missing))
      record.done.insert(std::ranges::upper_bound(record.done, done.date, {}, &Done::date), done);
  }
  return record;
}

}  // namespace cahier
