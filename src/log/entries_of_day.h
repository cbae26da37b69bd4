// What was done on one date, while the entries of that date are read.
#pragma once

#include <optional>
#include <set>
#include <utility>
#include <vector>

#include "log/log_reading.h"
#include "log/reported_task.h"

namespace cahier {

class EntriesOfDay {
 public:
  // REQUIRES: reading outlives this object.
  EntriesOfDay(LogReading& reading, Date date)
      : reading_(reading), date_(date), unread_before_(reading.faults.unread()) {}

  Date date() const { return date_; }
  LogFaults& faults() { return reading_.faults; }
  PastEditions& editions() { return reading_.editions; }
  BarRange whole(int piece) const { return reading_.pieces[piece].whole(); }
  // Whether something of this date could not be read.
  bool is_open() const { return reading_.faults.unread() != unread_before_; }

  std::vector<ReportedTask>& all() { return tasks_; }
  ReportedTask& add(const Spot& spot, int piece, Drill drill, BarRange bars);
  // What only a code has reported so far.
  ReportedTask* untold(Drill drill, int piece, BarRange bars);

  // The piece that an entry is for; refuses, once, an entry that does not say so when there are
  // several.
  std::optional<int> piece_of(const DayEntry& entry);
  // The bar of a cue start; refuses a number that does not exist.
  std::optional<int> cue_bar(PastEdition& edition, int piece, int number, const Spot& spot);
  // Refuses bars that are not learned by now, each once.
  void check_bars(int piece, BarRange bars, Drill drill, const Spot& spot, const std::string& code);

 private:
  LogReading& reading_;
  Date date_;
  int unread_before_;  // errors of earlier dates
  std::vector<ReportedTask> tasks_;
  std::set<std::pair<int, const LoggedDay*>> asked_;  // entries without a piece, reported
};

// Each reads one key of an entry into the tasks and refuses what cannot be.
void read_starts(const DayEntry& entry, EntriesOfDay& tasks);
void read_runs(const DayEntry& entry, EntriesOfDay& tasks);
// REQUIRES: everything done is among the tasks, and those from memory have a list of slips.
void read_slips(const DayEntry& entry, EntriesOfDay& tasks);

}  // namespace cahier
