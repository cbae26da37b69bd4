#include "log/record_of_log.h"

#include <algorithm>
#include <set>

#include "log/last_edition.h"
#include "log/past_editions.h"
#include "log/read_day.h"
#include "practice/kept_record.h"

namespace cahier {
namespace {

// Whether only a plan can tell what the entry names.
bool names_of_a_plan(const LoggedDay& day) {
  return day.all || !day.done.empty() || !day.hit.empty() || !day.missed.empty() ||
         std::any_of(day.learned.begin(), day.learned.end(),
                     [](const LoggedBars& one) { return !one.bars; });
}

class LogReader {
 public:
  LogReader(const std::vector<Log>& logs, const std::vector<Piece>& pieces, const Terms& terms,
            LaterEntries later)
      : logs_(logs),
        pieces_(pieces),
        terms_(terms),
        left_out_(later == LaterEntries::left_out),
        faults_(logs),
        editions_(logs, pieces, terms, record_, left_out_, faults_),
        learned_(pieces),
        reading_{pieces, editions_, faults_, learned_, record_, {}} {}

  Record read(Diagnostics& diagnostics) {
    const std::vector<DayEntry> entries = entries_by_date();
    assume_an_edition(entries);
    for (auto first = entries.begin(); first != entries.end();) {
      const Date date = first->day->date.value;
      const auto last = std::find_if(first, entries.end(), [&](const DayEntry& entry) {
        return entry.day->date.value != date;
      });
      count_as_learned(date);
      const std::vector<DayEntry> of_day(first, last);
      if (is_possible(of_day)) read_day(of_day, reading_);
      first = last;
    }
    count_as_learned(terms_.from);
    record_.edition = editions_.next_number();
    if (editions_.none() && !entries.empty()) record_.edition = std::max(2, record_.edition);
    // Bars learned tell nothing of an edition while some of them could not be read.
    if (PastEdition* last = faults_.unread() > 0 ? nullptr : last_edition())
      record_.last = what_became_of(*last, editions_, reading_, terms_);
    if (faults_.unread() == 0) record_.starts = editions_.numbered_starts();
    for (const PastEdition& edition : editions_.all()) {
      record_.thrown.push_back(edition.thrown);
      record_.thrown.back().edition = edition.number;
    }
    faults_.hand_over(diagnostics);
    return std::move(record_);
  }

 private:
  std::vector<DayEntry> entries_by_date() const {
    std::vector<DayEntry> entries;
    for (int log = 0; log < static_cast<int>(logs_.size()); ++log)
      for (const LoggedDay& day : logs_[log].days)
        if (day.tells() && (!left_out_ || day.date.value < terms_.from))
          entries.push_back({log, &day});
    std::stable_sort(entries.begin(), entries.end(), [](const DayEntry& a, const DayEntry& b) {
      return a.day->date.value < b.day->date.value;
    });
    return entries;
  }

  // Without an edition line, an edition began with the first thing that was set or done.
  void assume_an_edition(const std::vector<DayEntry>& entries) {
    const auto first = std::find_if(entries.begin(), entries.end(), [](const DayEntry& entry) {
      return names_of_a_plan(*entry.day);
    });
    if (!editions_.none() || first == entries.end()) return;
    Date from = entries.front().day->date.value;
    for (const DayEntry& entry : entries)
      for (const Written<std::string>& code : entry.day->done)
        from = std::min(from, last_day_of(code.value, entry.day->date.value));
    const LoggedDay& day = *first->day;
    const Place at = !day.done.empty() ? day.done.front().at : day.all.value_or(day.date.at);
    editions_.assume(from, first->spot(at));
  }

  // Everything, when the edition of a date keeps a piece that was learned before.
  void count_as_learned(Date date) {
    for (const PastEdition& edition : editions_.all()) {
      if (!edition.keep || edition.from > date || !kept_.insert(edition.number).second) continue;
      for (int piece = 0; piece < static_cast<int>(pieces_.size()); ++piece)
        for (const Done& done : taken_as_done(pieces_[piece], piece, terms_.method, edition.from,
                                              learned_.of(piece))) {
          if (done.drill == Drill::learn) learned_.learn(piece, done.bars, done.date, std::nullopt);
          std::vector<Done>& all = record_.done;
          all.insert(std::ranges::upper_bound(all, done.date, {}, &Done::date), done);
        }
    }
  }

  // Refuses a date that no workbook of the log holds.
  bool is_possible(const std::vector<DayEntry>& entries) {
    const Date date = entries.front().day->date.value;
    const PastEdition* edition = editions_.of(date);
    const auto refuse = [&](const Fault& fault) {
      for (const DayEntry& entry : entries)
        faults_.refuse_unread(entry.spot(entry.day->date.at), fault);
      return false;
    };
    if (date >= terms_.from) return refuse(in_the_new_workbook(date, terms_.from));
    if (!editions_.none() && !edition)
      return refuse(before_the_first_edition(date, editions_.all().front().from));
    // The performance itself belongs to its workbook.
    if (edition && date > edition->by) return refuse(after_the_edition(date, edition->by));
    return true;
  }

  PastEdition* last_edition() { return editions_.of(terms_.from - days{1}); }

  const std::vector<Log>& logs_;
  const std::vector<Piece>& pieces_;
  const Terms& terms_;
  bool left_out_;
  Record record_;
  LogFaults faults_;
  PastEditions editions_;
  LearnedInLog learned_;
  LogReading reading_;
  std::set<int> kept_;  // editions
};

}  // namespace

Record record_of(const std::vector<Log>& logs, const std::vector<Piece>& pieces, const Terms& terms,
                 Diagnostics& diagnostics, LaterEntries later) {
  return LogReader(logs, pieces, terms, later).read(diagnostics);
}

}  // namespace cahier
