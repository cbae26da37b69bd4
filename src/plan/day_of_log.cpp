#include "plan/day_of_log.h"

#include <algorithm>
#include <charconv>
#include <set>

#include "practice/read_log_values.h"

namespace cahier {
namespace {

// Something done, with what is known of it besides.
struct Deed {
  Done done;
  Spot spot;
  std::string code;                // empty where no code tells of it
  PastEdition* edition = nullptr;  // of the code
  int throws = 0;
  bool told = false;  // by more than its code: bars, starts, how a run went
};

bool from_memory(Drill drill) {
  return drill == Drill::recall || drill == Drill::join || drill == Drill::cue_starts ||
         drill == Drill::slow_pass || drill == Drill::counted_pass;
}

// The beginning of a sentence that goes on with a bar.
std::string_view doing(Drill drill) {
  switch (drill) {
    case Drill::learn:
      return "this learns";
    case Drill::join:
      return "this join plays";
    case Drill::recall:
      return "this recall is of";
    case Drill::cue_starts:
      return "this cue start is at";
    case Drill::slow_pass:
      return "this slow pass plays";
    case Drill::counted_pass:
      return "this counted pass plays";
    case Drill::run_through:
      return "this run-through plays";
    case Drill::spoken_part:
      return "this spoken part is of";
    case Drill::write_out:
      return "this write-out is of";
  }
  return "this is of";
}

// The order of a day: by code, then what has none.
bool earlier_in_day(const Deed& a, const Deed& b) {
  if (a.code.empty() || b.code.empty()) return !a.code.empty() && b.code.empty();
  if (a.code.size() != b.code.size()) return a.code.size() < b.code.size();
  return a.code < b.code;
}

BarRange around(std::vector<int> bars, BarRange otherwise) {
  if (bars.empty()) return otherwise;
  const auto [least, most] = std::minmax_element(bars.begin(), bars.end());
  return {*least, *most};
}

class DayReading {
 public:
  DayReading(const std::vector<DayEntry>& entries, LogReading& reading)
      : entries_(entries),
        reading_(reading),
        date_(entries.front().day->date.value),
        unread_before_(reading.faults.unread()) {}

  void read() {
    for (const DayEntry& entry : entries_) read_codes(entry);
    for (const DayEntry& entry : entries_) read_learned(entry);
    for (Deed& deed : deeds_)
      if (deed.done.drill == Drill::learn) learn(deed);
    std::stable_sort(deeds_.begin(), deeds_.end(), earlier_in_day);
    for (const DayEntry& entry : entries_) read_recalled(entry);
    for (const DayEntry& entry : entries_) read_starts(entry);
    for (const DayEntry& entry : entries_) read_runs(entry);
    for (const Deed& deed : deeds_) check_learned(deed);
    for (Deed& deed : deeds_)
      if (deed.done.drill != Drill::run_through) deed.done.slips.emplace();
    for (const DayEntry& entry : entries_) read_slips_of_day(entry);
    read_minutes();
    for (Deed& deed : deeds_) hand_in(deed);
  }

 private:
  LogFaults& faults() { return reading_.faults; }
  const Piece& piece(int index) const { return reading_.pieces[index]; }

  std::vector<std::string> titles() const {
    std::vector<std::string> all;
    for (const Piece& one : reading_.pieces) all.push_back(one.title);
    return all;
  }

  // The piece that an entry is of; refuses an entry that does not say where there are several.
  std::optional<int> piece_of(const DayEntry& entry) {
    const auto& written = entry.day->piece;
    if (!written) {
      if (reading_.pieces.size() == 1) return 0;
      if (asked_.insert({entry.log, entry.day}).second)
        faults().refuse_unread(entry.spot(entry.day->date.at), which_piece(titles()));
      return std::nullopt;
    }
    const std::string& text = written->value;
    int number = 0;
    const auto read = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool is_number = read.ec == std::errc() && read.ptr == text.data() + text.size();
    if (is_number && number >= 1 && number <= static_cast<int>(reading_.pieces.size()))
      return number - 1;
    for (int index = 0; index < static_cast<int>(reading_.pieces.size()); ++index)
      if (piece(index).title == text) return index;
    if (asked_.insert({entry.log, entry.day}).second)
      faults().refuse_unread(entry.spot(written->at),
                             is_number ? no_such_piece_number(number, reading_.pieces.size())
                                       : no_such_piece(text, titles()));
    return std::nullopt;
  }

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
    const std::optional<int> only = entry.day->piece ? piece_of(entry) : std::nullopt;
    const std::vector<SetTask> tasks = reading_.editions.on(date_);
    if (tasks.empty()) faults().refuse_unread(spot, no_tasks_that_day(date_));
    for (const SetTask& task : tasks)
      if (!only || *only == task.piece) tick(task, reading_.editions.of(date_), spot);
  }

  void tick(const SetTask& task, PastEdition* edition, const Spot& spot) {
    const auto [earlier, fresh] = reading_.ticked.insert({{edition->number, task.code}, spot});
    if (!fresh)
      return faults().refuse(spot, done_twice(task.code, faults().place_of(earlier->second, spot)));
    Deed deed;
    deed.spot = spot;
    deed.code = task.code;
    deed.edition = edition;
    deed.throws = task.throws;
    deed.done.date = date_;
    deed.done.piece = task.piece;
    deed.done.drill = task.drill;
    deed.done.bars = task.bars;
    if (task.drill == Drill::cue_starts) {
      for (const int number : task.cues)
        if (const auto bar = cue_bar(*edition, task.piece, number, spot))
          deed.done.starts.push_back(*bar);
      deed.done.bars = around(deed.done.starts, piece(task.piece).whole());
    }
    deeds_.push_back(std::move(deed));
  }

  std::optional<int> cue_bar(PastEdition& edition, int of_piece, int number, const Spot& spot) {
    const std::vector<int>& bars = reading_.editions.cue_bars(edition, of_piece);
    if (number >= 1 && number <= static_cast<int>(bars.size())) return bars[number - 1];
    faults().refuse(spot, no_such_cue_start(number, bars.size()));
    return std::nullopt;
  }

  std::optional<BarRange> bars_of(const DayEntry& entry, const LoggedBars& logged, int of_piece) {
    const Spot spot = entry.spot(logged.what.at);
    if (!logged.bars) {
      std::vector<std::string> names;
      const auto bars = reading_.editions.chunk(logged.what.value, of_piece, date_, names);
      if (!bars) faults().refuse_unread(spot, no_such_chunk(logged.what.value, names));
      return bars;
    }
    const BarRange whole = piece(of_piece).whole();
    if (whole.contains(*logged.bars)) return logged.bars;
    faults().refuse_unread(spot, no_such_bar(outside(*logged.bars, whole), whole));
    return std::nullopt;
  }

  // What a code told of and nothing else yet.
  Deed* untold(Drill drill, int of_piece, BarRange bars) {
    for (Deed& deed : deeds_)
      if (!deed.code.empty() && !deed.told && deed.done.drill == drill &&
          deed.done.piece == of_piece && deed.done.bars == bars)
        return &deed;
    return nullptr;
  }

  // A code and a line of the same bars on the same day tell of one thing.
  void add_bars(const DayEntry& entry, const LoggedBars& logged, Drill drill) {
    const auto of_piece = piece_of(entry);
    if (!of_piece) return;
    const auto bars = bars_of(entry, logged, *of_piece);
    if (!bars) return;
    if (Deed* coded = untold(drill, *of_piece, *bars)) {
      coded->told = true;
      coded->done.minutes = logged.minutes;
      return;
    }
    Deed deed;
    deed.spot = entry.spot(logged.what.at);
    deed.done.date = date_;
    deed.done.piece = *of_piece;
    deed.done.drill = drill;
    deed.done.bars = *bars;
    deed.done.minutes = logged.minutes;
    deeds_.push_back(std::move(deed));
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

  void read_starts(const DayEntry& entry) {
    if (entry.day->hit.empty() && entry.day->missed.empty()) return;
    const auto of_piece = piece_of(entry);
    PastEdition* edition = reading_.editions.of(date_);
    if (!of_piece || !edition) return;
    Deed& deed = told_starts(*of_piece, entry);
    const auto take = [&](const std::vector<Written<int>>& numbers, std::vector<int>& bars) {
      for (const Written<int>& number : numbers) {
        const Spot spot = entry.spot(number.at);
        const auto bar = cue_bar(*edition, *of_piece, number.value, spot);
        if (!bar) continue;
        bars.push_back(*bar);
        std::erase(deed.done.starts, *bar);
        check_bars(*of_piece, {*bar, *bar}, Drill::cue_starts, spot);
      }
    };
    take(entry.day->hit, deed.done.hit);
    take(entry.day->missed, deed.done.missed);
    std::vector<int> all = deed.done.starts;
    all.insert(all.end(), deed.done.hit.begin(), deed.done.hit.end());
    all.insert(all.end(), deed.done.missed.begin(), deed.done.missed.end());
    deed.done.bars = around(all, piece(*of_piece).whole());
  }

  // The one deed of a day's cue starts that were told one by one; codes of that day join it.
  Deed& told_starts(int of_piece, const DayEntry& entry) {
    const auto of_starts = [&](const Deed& deed) {
      return deed.done.drill == Drill::cue_starts && deed.done.piece == of_piece;
    };
    const auto first = std::find_if(deeds_.begin(), deeds_.end(), of_starts);
    if (first == deeds_.end()) {
      Deed deed;
      deed.spot = entry.spot(entry.day->date.at);
      deed.done.date = date_;
      deed.done.piece = of_piece;
      deed.done.drill = Drill::cue_starts;
      deed.told = true;
      return deeds_.emplace_back(std::move(deed));
    }
    first->told = true;
    for (auto other = first + 1; other != deeds_.end();) {
      if (!of_starts(*other)) {
        ++other;
        continue;
      }
      first->done.starts.insert(first->done.starts.end(), other->done.starts.begin(),
                                other->done.starts.end());
      other = deeds_.erase(other);
    }
    return *first;
  }

  void read_runs(const DayEntry& entry) {
    for (const LoggedRun& run : entry.day->runs) {
      const auto of_piece = piece_of(entry);
      if (!of_piece) return;
      const BarRange whole = piece(*of_piece).whole();
      Deed* deed = untold(Drill::run_through, *of_piece, whole);
      if (!deed) {
        deed = &deeds_.emplace_back();
        deed->spot = entry.spot(run.at);
        deed->done.date = date_;
        deed->done.piece = *of_piece;
        deed->done.drill = Drill::run_through;
        deed->done.bars = whole;
      }
      deed->told = true;
      tell_run(entry, run, *deed);
    }
  }

  void tell_run(const DayEntry& entry, const LoggedRun& run, Deed& deed) {
    const BarRange whole = piece(deed.done.piece).whole();
    const auto bars = [&](const std::vector<Written<int>>& written) {
      std::vector<int> read;
      for (const Written<int>& bar : written) {
        if (!whole.contains(bar.value))
          faults().refuse(entry.spot(bar.at), no_such_bar(bar.value, whole));
        read.push_back(bar.value);
      }
      return read;
    };
    if (run.slips) deed.done.slips = bars(*run.slips);
    deed.done.rejoined = bars(run.rejoined);
    deed.done.recorded = run.recorded;
    deed.done.listener = run.listener;
    if (run.rejoined.empty()) return;
    const Spot spot = entry.spot(run.rejoined.front().at);
    if (!deed.done.slips || deed.done.slips->empty())
      return faults().refuse(spot, rejoined_without_slips());
    const int slip = *std::min_element(deed.done.slips->begin(), deed.done.slips->end());
    for (const Written<int>& bar : run.rejoined)
      if (bar.value < slip)
        faults().refuse(entry.spot(bar.at), rejoined_before_the_slip(bar.value, slip));
  }

  // Refuses bars that are not learned by now, each once.
  void check_bars(int of_piece, BarRange bars, Drill drill, const Spot& spot) {
    const auto bar = reading_.learned.first_unlearned(of_piece, bars);
    if (!bar || faults().unread() > 0) return;
    faults().refuse(spot, not_learned_by_then(doing(drill), *bar, date_));
    reading_.learned.learn(of_piece, bars, {date_, std::nullopt, false});
  }

  void check_learned(const Deed& deed) {
    if (deed.done.drill == Drill::learn) return;
    if (deed.done.drill != Drill::cue_starts)
      return check_bars(deed.done.piece, deed.done.bars, deed.done.drill, deed.spot);
    for (const int bar : deed.done.starts)
      check_bars(deed.done.piece, {bar, bar}, Drill::cue_starts, deed.spot);
  }

  // From a cue start one plays on as far as the next.
  bool plays(const Deed& deed, int bar) {
    if (deed.done.drill != Drill::cue_starts) return deed.done.bars.contains(bar);
    if (deed.throws > 0 && !deed.told) return true;
    PastEdition* edition = deed.edition ? deed.edition : reading_.editions.of(date_);
    const std::vector<int>& cues = reading_.editions.cue_bars(*edition, deed.done.piece);
    const auto next = std::upper_bound(cues.begin(), cues.end(), bar);
    if (next == cues.begin()) return false;
    const int begin = *(next - 1);
    return std::ranges::count(deed.done.starts, begin) + std::ranges::count(deed.done.hit, begin) +
               std::ranges::count(deed.done.missed, begin) >
           0;
  }

  void read_slips_of_day(const DayEntry& entry) {
    if (!entry.day->slips || entry.day->slips->empty()) return;
    const auto of_piece = piece_of(entry);
    if (!of_piece) return;
    for (const Written<int>& slip : *entry.day->slips)
      read_slip(*of_piece, slip.value, entry.spot(slip.at));
  }

  void read_slip(int of_piece, int bar, const Spot& spot) {
    const BarRange whole = piece(of_piece).whole();
    if (!whole.contains(bar)) return faults().refuse(spot, no_such_bar(bar, whole));
    const Deed* other = nullptr;
    for (Deed& deed : deeds_) {
      if (deed.done.piece != of_piece || !plays(deed, bar)) continue;
      if (from_memory(deed.done.drill)) return deed.done.slips->push_back(bar);
      if (!other || deed.done.drill == Drill::run_through) other = &deed;
    }
    if (other && other->done.drill != Drill::run_through)
      faults().warn(spot, slip_while_learning(bar));
    else if (faults().unread() == unread_before_)
      faults().refuse(spot, other ? slip_of_a_run(bar) : slip_not_played(bar, date_));
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
  int unread_before_;  // faults of earlier dates
  std::vector<Deed> deeds_;
  std::set<std::pair<int, const LoggedDay*>> asked_;  // entries without a piece, reported
};

}  // namespace

void read_day(const std::vector<DayEntry>& entries, LogReading& reading) {
  DayReading(entries, reading).read();
}

}  // namespace cahier
