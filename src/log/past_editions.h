// The workbooks in a log, and what their codes, cue starts and chunk names stood for.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "log/log_faults.h"
#include "plan/plan.h"
#include "plan/terms.h"

namespace cahier {

// What a workbook set for a day.
struct SetTask {
  std::string code;
  Date date;
  int piece = 0;  // index
  Drill drill = Drill::recall;
  BarRange bars;          // of all drills but cue starts
  std::string chunk;      // of learning; may be empty
  std::vector<int> cues;  // numbers of the cue starts assigned
  int throws = 0;
  std::optional<double> minutes;  // where the log or the plan tells
};

struct PastEdition {
  int number = 1;
  Date from;
  Date by;
  std::optional<double> minutes;  // a day, the most of a week
  bool keep = false;
  std::vector<std::vector<int>> cues;  // by piece, bars; empty where the log does not tell
  ThrownStarts thrown{};               // no bars where the log does not tell
  std::vector<SetTask> told;           // in the log
  std::optional<Plan> plan;            // made again, where that was needed

  bool lasts_on(Date date) const { return from <= date && date < by; }
};

// The first day from `from` on, and the last until `until`, that a code can be of.
// REQUIRES: a code, as read.
Date first_day_of(const std::string& code, Date from);
Date last_day_of(const std::string& code, Date until);

class PastEditions {
 public:
  // Reads the editions of the logs and refuses what contradicts itself. Plans that must be made
  // again use `terms`, with what `so_far` says of the days before them.
  // REQUIRES: everything outlives this object.
  PastEditions(const std::vector<Log>& logs, const std::vector<Piece>& pieces, const Terms& terms,
               const Record& so_far, bool later_left_out, LogFaults& faults);

  // Of the new workbook.
  const Method& method() const { return terms_.method; }
  bool none() const { return editions_.empty(); }
  const std::vector<PastEdition>& all() const { return editions_; }
  // A first edition without a line in the log.
  void assume(Date from, const Spot& spot);
  // The number of the new workbook.
  int next_number() const { return next_number_; }

  // The last edition that began on this date or before; nullptr when there is none.
  PastEdition* of(Date date);

  // The task of a code that is reported on a date: of that day's edition or an earlier one.
  struct Found {
    SetTask task;
    PastEdition* edition = nullptr;
  };
  std::optional<Found> find(const std::string& code, Date date);
  // The day that a code is of, whether or not it is a task, when it is reported on a date.
  Date day_of(const std::string& code, Date date) const;
  // Everything set for a day by its edition.
  std::vector<SetTask> on(Date date);
  // The minutes of that; none where the log does not tell all of them. No week is planned again for
  // it that the log tells of.
  std::optional<double> minutes_on(Date date);
  // Everything an edition set, by date. Weeks that are not in the log are planned again.
  std::vector<SetTask> tasks_of(PastEdition& edition, Date until);

  // How many tasks an edition set for the days from a date on; none where it has to be planned
  // again and does not fit.
  std::optional<TaskCounts> ahead(PastEdition& edition, Date from);

  const std::vector<int>& cue_bars(PastEdition& edition, int piece);
  // The cue starts that the new workbook has to number as they were: as its own line in the log
  // tells, which wins, or else as the workbook before it has them. Empty without either.
  std::vector<NumberedStarts> numbered_starts();
  // The bars of a chunk by the name it had on a date. `names` is filled with the names that
  // there were when it is not one of them.
  std::optional<BarRange> chunk(const std::string& name, int piece, Date date,
                                std::vector<std::string>& names);

 private:
  void add(const LoggedEdition& written, int log);
  void add_tasks(const LoggedEdition& written, int log, PastEdition& edition);
  void add_cues(const LoggedEdition& written, int log, PastEdition& edition);
  const Plan& plan_of(PastEdition& edition);
  // Likewise of the edition at an index; `told` is what its own line tells, by piece.
  std::vector<NumberedStarts> numbered_starts(std::size_t index,
                                              const std::vector<std::vector<int>>& told);
  void take_own_line(const LoggedEdition& written);
  std::vector<SetTask> planned(PastEdition& edition);

  const std::vector<Piece>& pieces_;
  const Terms& terms_;
  const Record& so_far_;
  LogFaults& faults_;
  std::vector<PastEdition> editions_;  // by number
  struct WrittenAt {
    int number;
    std::string code;  // empty for the edition itself
    Spot spot;
  };
  std::vector<WrittenAt> written_at_;
  std::vector<std::vector<int>> own_cues_;  // of the new workbook, as its line tells: by piece
  int next_number_ = 1;
};

}  // namespace cahier
