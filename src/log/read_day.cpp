#include "log/read_day.h"

#include <algorithm>

#include "log/entries_of_day.h"
#include "log/read_log_values.h"

namespace cahier {
namespace {

class DayReading {
 public:
  DayReading(const std::vector<DayEntry>& entries, LogReading& reading)
      : entries_(entries),
        reading_(reading),
        date_(entries.front().day->date.value),
        deeds_(reading, date_) {}

  void read() {
    for (const DayEntry& entry : entries_) read_codes(entry);
    for (const DayEntry& entry : entries_) read_learned(entry);
    for (Deed& deed : deeds_.all())
      if (deed.done.drill == Drill::learn) learn(deed);
    std::stable_sort(deeds_.all().begin(), deeds_.all().end(), earlier_in_day);
    for (const DayEntry& entry : entries_) read_recalled(entry);
    for (const DayEntry& entry : entries_) read_starts(entry, deeds_);
    for (const DayEntry& entry : entries_) read_runs(entry, deeds_);
    for (const Deed& deed : deeds_.all()) check_learned(deed);
    for (Deed& deed : deeds_.all())
      if (deed.done.drill != Drill::run_through) deed.done.slips.emplace();
    for (const DayEntry& entry : entries_) read_slips(entry, deeds_);
    read_minutes();
    for (Deed& deed : deeds_.all()) hand_in(deed);
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
    const std::optional<int> only = entry.day->piece ? deeds_.piece_of(entry) : std::nullopt;
    const std::vector<SetTask> tasks = reading_.editions.on(date_);
    if (tasks.empty()) faults().refuse_unread(spot, no_tasks_that_day(date_));
    for (const SetTask& task : tasks)
      if (!only || *only == task.piece) tick(task, reading_.editions.of(date_), spot);
  }

  void tick(const SetTask& task, PastEdition* edition, const Spot& spot) {
    const auto [earlier, fresh] = reading_.ticked.insert({{edition->number, task.code}, spot});
    if (!fresh)
      return faults().refuse(spot, done_twice(task.code, faults().place_of(earlier->second, spot)));
    Deed& deed = deeds_.add(spot, task.piece, task.drill, task.bars);
    deed.code = task.code;
    deed.edition = edition;
    deed.throws = task.throws;
    if (task.drill == Drill::cue_starts) {
      for (const int number : task.cues)
        if (const auto bar = deeds_.cue_bar(*edition, task.piece, number, spot))
          deed.done.starts.push_back(*bar);
      deed.done.bars = around(deed.done.starts, deeds_.whole(task.piece));
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
    const BarRange whole = deeds_.whole(of_piece);
    if (whole.contains(*logged.bars)) return logged.bars;
    faults().refuse_unread(spot, no_such_bar(outside(*logged.bars, whole), whole));
    return std::nullopt;
  }

  // A code and a line of the same bars on the same day tell of one thing.
  void add_bars(const DayEntry& entry, const LoggedBars& logged, Drill drill) {
    const auto of_piece = deeds_.piece_of(entry);
    if (!of_piece) return;
    const auto bars = bars_of(entry, logged, *of_piece);
    if (!bars) return;
    if (Deed* coded = deeds_.untold(drill, *of_piece, *bars)) {
      coded->told = true;
      coded->done.minutes = logged.minutes;
      return;
    }
    deeds_.add(entry.spot(logged.what.at), *of_piece, drill, *bars).done.minutes = logged.minutes;
  }

  void read_learned(const DayEntry& entry) {
    for (const LoggedBars& logged : entry.day->learned) add_bars(entry, logged, Drill::learn);
  }

  void read_recalled(const DayEntry& entry) {
    for (const LoggedBars& logged : entry.day->recalled) add_bars(entry, logged, Drill::recall);
  }

  void learn(const Deed& deed) {
    const BarRange bars = deed.done.bars;
    for (int bar = bars.first; bar <= bars.last; ++bar) {
      const auto* since = reading_.learned.since(deed.done.piece, bar);
      if (!since || !since->spot) continue;
      const std::string where = faults().place_of(*since->spot, deed.spot);
      const bool one_by_code = since->by_code != !deed.code.empty();
      faults().refuse(deed.spot, one_by_code && since->date != date_
                                     ? learned_on_two_days(bars, date_, since->date, where)
                                     : learned_twice(bars, bar, since->date, where));
      return;
    }
    reading_.learned.learn(deed.done.piece, bars, {date_, deed.spot, !deed.code.empty()});
  }

  void check_learned(const Deed& deed) {
    if (deed.done.drill == Drill::learn) return;
    if (deed.done.drill != Drill::cue_starts)
      return deeds_.check_bars(deed.done.piece, deed.done.bars, deed.done.drill, deed.spot,
                               deed.code);
    for (const int bar : deed.done.starts)
      deeds_.check_bars(deed.done.piece, {bar, bar}, Drill::cue_starts, deed.spot, deed.code);
  }

  void read_minutes() {
    double minutes = 0;
    for (const DayEntry& entry : entries_) {
      if (!entry.day->minutes) continue;
      minutes += entry.day->minutes->value;
      if (minutes > kMostMinutesOfADay)
        return faults().refuse(entry.spot(entry.day->minutes->at), too_many_minutes(date_));
    }
    if (minutes > 0) reading_.record.minutes.push_back({date_, minutes});
  }

  void hand_in(const Deed& deed) {
    if (deed.done.drill != Drill::learn) return reading_.record.done.push_back(deed.done);
    const std::vector<BarRange> sources = reading_.learned.sources(deed.done.piece, deed.done.bars);
    for (const BarRange& bars : sources) {
      Done done = deed.done;
      done.bars = bars;
      if (done.minutes) *done.minutes *= 1.0 * bars.size() / deed.done.bars.size();
      reading_.record.done.push_back(std::move(done));
    }
  }

  const std::vector<DayEntry>& entries_;
  LogReading& reading_;
  Date date_;
  DayDeeds deeds_;
};

}  // namespace

void read_day(const std::vector<DayEntry>& entries, LogReading& reading) {
  DayReading(entries, reading).read();
}

}  // namespace cahier
