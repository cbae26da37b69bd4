// The contradictions a log can have, in words, and their places.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include "log/written_log.h"
#include "piece/bar_range.h"
#include "text/date.h"
#include "text/diagnostics.h"

namespace cahier {

// Where something stands among several logs.
struct Spot {
  int log = 0;  // index
  Place at;
};

// Each kind of fault is made by a function of its own, below.
struct Fault {
  std::string message;
  std::string hint;
  MessageKind kind = MessageKind::current();
};

// The first bar of `bars` that is not in `piece`. REQUIRES: there is one.
inline int outside(BarRange bars, BarRange piece) {
  return bars.first < piece.first ? bars.first : std::max(bars.first, piece.last + 1);
}

// Collects the problems of several logs.
class LogFaults {
 public:
  // REQUIRES: logs outlive this object.
  explicit LogFaults(const std::vector<Log>& logs);

  void refuse(const Spot& spot, const Fault& fault);
  void warn(const Spot& spot, const Fault& fault);
  // Refuses something that makes it unclear what was done.
  void refuse_unread(const Spot& spot, const Fault& fault);
  // How many of those there were. If there are any, bars are not reported as never learned: they
  // may have been.
  int unread() const { return unread_; }
  // "line 4", with the log's name when that is another than `seen_from`.
  std::string place_of(const Spot& spot, const Spot& seen_from) const;
  // Hands over everything, log by log in the order of their lines.
  void hand_over(Diagnostics& diagnostics);

 private:
  const std::vector<Log>& logs_;
  std::vector<Diagnostics> of_;  // by log
  int unread_ = 0;
};

// Editions
Fault another_date_of_edition(int number, Date there, std::string_view where);
Fault edition_out_of_order(int number, int before, Date from);
Fault edition_begins_too_late(Date from, Date new_from);
Fault edition_too_long();
Fault code_outside_edition(const std::string& code, Date from, Date by);
Fault code_stands_for_two_things(const std::string& code, std::string_view where);
Fault no_such_piece_number(int number, std::size_t pieces);
Fault cues_of_how_many_pieces(std::size_t lists, std::size_t pieces);
Fault no_edition_line(Date from, Date by);

// Dates
Fault before_the_first_edition(Date date, Date from);
Fault in_the_new_workbook(Date date, Date new_from);
Fault after_the_edition(Date date, Date by);

// Names
Fault no_such_code(const std::string& code, Date date, const std::vector<std::string>& codes);
Fault no_tasks_that_day(Date date);
Fault no_such_chunk(const std::string& name, const std::vector<std::string>& chunks);
Fault no_such_cue_start(int number, std::size_t cues);
Fault cue_start_twice(int bar);
Fault no_such_bar(int bar, BarRange piece);
Fault no_such_piece(const std::string& name, const std::vector<std::string>& titles);
Fault which_piece(const std::vector<std::string>& titles);

// What cannot have happened
Fault done_twice(const std::string& code, std::string_view where);
Fault learned_twice(BarRange bars, int bar, Date when, std::string_view where);
Fault learned_on_two_days(BarRange bars, Date here, Date there, std::string_view where);
Fault not_learned_by_then(std::string_view what, BarRange bars, int bar, Date date);
Fault slip_not_played(int bar, Date date);
Fault slip_of_a_run(int bar);
Fault slip_while_learning(int bar);
Fault rejoined_without_slips();
Fault rejoined_before_the_slip(int bar, int slip);
Fault too_many_minutes(Date date);
// More than a day is believed to have taken; `most` counts in their place.
Fault minutes_beyond_belief(double minutes, Date date, double planned, double most);

}  // namespace cahier
