#include "log/read_day.h"

#include <algorithm>

#include "log/entries_of_day.h"
#include "log/read_log_values.h"
#include "practice/pace_samples.h"

namespace cahier {
namespace {

// More than this times what was planned is taken for it: a slip of the pen, or a pause for lunch.
constexpr double kBeyondBelief = 10;

class DayReading {
 public:
  DayReading(const std::vector<DayEntry>& entries, LogReading& reading)
      : entries_(entries),
        reading_(reading),
        date_(entries.front().day->date.value),
        tasks_(reading, date_) {}

  void read() {
    for (const DayEntry& entry : entries_) read_codes(entry);
    for (const DayEntry& entry : entries_) read_learned(entry);
    for (ReportedTask& task : tasks_.all())
      if (task.done.drill == Drill::learn) learn(task);
    std::stable_sort(tasks_.all().begin(), tasks_.all().end(), earlier_in_day);
    for (const DayEntry& entry : entries_) read_recalled(entry);
    for (const DayEntry& entry : entries_) read_starts(entry, tasks_);
    for (const DayEntry& entry : entries_) read_runs(entry, tasks_);
    for (const ReportedTask& task : tasks_.all()) check_learned(task);
    for (ReportedTask& task : tasks_.all())
      if (facts_of(task.done.drill).slips != Slips::with_the_run) task.done.slips.emplace();
    for (const DayEntry& entry : entries_) read_slips(entry, tasks_);
    doubt_minutes();
    read_minutes();
    for (ReportedTask& task : tasks_.all()) hand_in(task);
  }

 private:
  LogFaults& faults() { return reading_.faults; }

  void read_codes(const DayEntry& entry) {
    for (const Written<std::string>& code : entry.day->done) {
      const auto found = reading_.editions.find(code.value, date_);
      if (!found) {
        const Date of_code = reading_.editions.day_of(code.value, date_);
        std::vector<std::string> codes;
        for (const SetTask& task : reading_.editions.on(of_code)) codes.push_back(task.code);
        faults().refuse_unread(entry.spot(code.at), no_such_code(code.value, of_code, codes));
      } else {
        tick(found->task, found->edition, entry.spot(code.at));
      }
    }
    if (!entry.day->all) return;
    const Spot spot = entry.spot(*entry.day->all);
    const std::optional<int> only = entry.day->piece ? tasks_.piece_of(entry) : std::nullopt;
    const std::vector<SetTask> tasks = reading_.editions.on(date_);
    if (tasks.empty()) faults().refuse_unread(spot, no_tasks_that_day(date_));
    for (const SetTask& task : tasks)
      if (!only || *only == task.piece) tick(task, reading_.editions.of(date_), spot);
  }

  void tick(const SetTask& set, PastEdition* edition, const Spot& spot) {
    const auto [earlier, fresh] = reading_.ticked.insert({{edition->number, set.code}, spot});
    if (!fresh)
      return faults().refuse(spot, done_twice(set.code, faults().place_of(earlier->second, spot)));
    ReportedTask& task = tasks_.add(spot, set.piece, set.drill, set.bars);
    task.code = set.code;
    task.edition = edition;
    task.throws = set.throws;
    task.minutes = set.minutes;
    if (covers(set.drill, Covers::starts)) {
      for (const int number : set.cues)
        if (const auto bar = tasks_.cue_bar(*edition, set.piece, number, spot))
          task.done.starts.push_back(*bar);
      task.done.bars = around(task.done.starts, tasks_.whole(set.piece));
    }
  }

  std::optional<BarRange> bars_of(const DayEntry& entry, const LoggedBars& logged, int of_piece) {
    const Spot spot = entry.spot(logged.what.at);
    if (!logged.bars) {
      std::vector<std::string> names;
      const auto bars = reading_.editions.chunk(logged.what.value, of_piece, date_, names);
      if (!bars) faults().refuse_unread(spot, no_such_chunk(logged.what.value, names));
      return bars;
    }
    const BarRange whole = tasks_.whole(of_piece);
    if (whole.contains(*logged.bars)) return logged.bars;
    faults().refuse_unread(spot, no_such_bar(outside(*logged.bars, whole), whole));
    return std::nullopt;
  }

  // A code and a line with the same bars on the same day are the same task.
  void add_bars(const DayEntry& entry, const LoggedBars& logged, Drill drill) {
    const auto of_piece = tasks_.piece_of(entry);
    if (!of_piece) return;
    const auto bars = bars_of(entry, logged, *of_piece);
    if (!bars) return;
    if (ReportedTask* coded = tasks_.untold(drill, *of_piece, *bars)) {
      coded->told = true;
      tell_minutes(entry, logged, *coded);
      return;
    }
    tell_minutes(entry, logged, tasks_.add(entry.spot(logged.what.at), *of_piece, drill, *bars));
  }

  void read_learned(const DayEntry& entry) {
    for (const LoggedBars& logged : entry.day->learned) add_bars(entry, logged, Drill::learn);
  }

  void read_recalled(const DayEntry& entry) {
    for (const LoggedBars& logged : entry.day->recalled) add_bars(entry, logged, Drill::recall);
  }

  void learn(const ReportedTask& task) {
    const BarRange bars = task.done.bars;
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      const auto* line = reading_.learned.line(task.done.piece, bar);
      if (!line) continue;
      const Date since = *reading_.learned.of(task.done.piece).since(bar);
      const std::string where = faults().place_of(line->spot, task.spot);
      const bool one_by_code = line->by_code != !task.code.empty();
      faults().refuse(task.spot, one_by_code && since != date_
                                     ? learned_on_two_days(bars, date_, since, where)
                                     : learned_twice(bars, bar, since, where));
      return;
    }
    reading_.learned.learn(task.done.piece, bars, date_, {{task.spot, !task.code.empty()}});
  }

  void check_learned(const ReportedTask& task) {
    if (task.done.drill == Drill::learn) return;
    if (!covers(task.done.drill, Covers::starts))
      return tasks_.check_bars(task.done.piece, task.done.bars, task.done.drill, task.spot,
                               task.code);
    for (const int bar : task.done.starts)
      tasks_.check_bars(task.done.piece, {bar, bar}, task.done.drill, task.spot, task.code);
  }

  static void tell_minutes(const DayEntry& entry, const LoggedBars& logged, ReportedTask& task) {
    if (!logged.minutes) return;
    task.done.minutes = logged.minutes->value;
    task.minutes_at = entry.spot(logged.minutes->at);
  }

  // Minutes planned for the day, or for what was done where that is more: what was missed is made
  // up. Where the log does not tell, the method does.
  double planned() {
    double done = 0;
    for (const ReportedTask& task : tasks_.all())
      done += task.minutes.value_or(expected_minutes(task.done, reading_.pieces[task.done.piece],
                                                     reading_.editions.method()));
    return std::max(done, reading_.editions.minutes_on(date_).value_or(0));
  }

  void doubt_minutes() {
    planned_ = planned();
    for (ReportedTask& task : tasks_.all())
      if (task.minutes_at) task.done.minutes = believed(*task.done.minutes, *task.minutes_at);
  }

  // As many minutes as count, with a warning where those are fewer.
  double believed(double minutes, const Spot& spot) {
    const double most = planned_ > 0 ? kBeyondBelief * planned_ : minutes;
    if (minutes <= most) return minutes;
    faults().warn(spot, minutes_beyond_belief(minutes, date_, planned_, most));
    return most;
  }

  void read_minutes() {
    double minutes = 0;
    std::optional<Spot> last;
    for (const DayEntry& entry : entries_) {
      if (!entry.day->minutes) continue;
      minutes += entry.day->minutes->value;
      last = entry.spot(entry.day->minutes->at);
      if (minutes > kMostMinutesOfADay) return faults().refuse(*last, too_many_minutes(date_));
    }
    if (last) reading_.record.minutes.push_back({date_, believed(minutes, *last)});
  }

  void hand_in(const ReportedTask& task) {
    if (task.done.drill != Drill::learn) return reading_.record.done.push_back(task.done);
    for (const BarRange& bars : reading_.learned.of(task.done.piece).sources(task.done.bars)) {
      Done done = task.done;
      done.bars = bars;
      if (done.minutes) *done.minutes *= 1.0 * bars.size() / task.done.bars.size();
      reading_.record.done.push_back(std::move(done));
    }
  }

  const std::vector<DayEntry>& entries_;
  LogReading& reading_;
  Date date_;
  EntriesOfDay tasks_;
  double planned_ = 0;  // minutes; 0 where nothing is known of any
};

}  // namespace

void read_day(const std::vector<DayEntry>& entries, LogReading& reading) {
  DayReading(entries, reading).read();
}

}  // namespace cahier
