// A log as it is written: what the player reports of one or more workbooks. What its codes, cue
// starts and chunk names stand for is not known here.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "piece/bar_range.h"
#include "piece/wishes.h"
#include "practice/drill.h"
#include "text/date.h"
#include "text/source.h"

namespace cahier {

// A value and where it stands.
template <typename T>
struct Written {
  T value{};
  Place at;
};

// What a code stood for in its workbook.
struct LoggedTask {
  Written<std::string> code;  // "0105-2"
  std::optional<Written<int>> piece;
  Drill drill = Drill::recall;
  Written<BarRange> bars;          // of all drills but cue starts
  std::string chunk;               // of learning; may be empty
  std::vector<Written<int>> cues;  // cue starts assigned, by number
  int throws = 0;
  std::optional<double> minutes;  // planned
};

// A line that says what a workbook was.
struct LoggedEdition {
  Written<int> number;
  Written<Date> from;
  std::optional<Written<Date>> by;
  std::optional<double> minutes;                  // a day, the most of a week
  bool keep = false;                              // of a piece that was learned before
  std::vector<std::vector<Written<int>>> cues;    // by piece: the bars of cue starts 1, 2, 3 …
  std::vector<std::vector<Written<int>>> shares;  // of the dice, of the same; empty where all are 1
  Throw dice = Throw::two_dice;
  std::vector<LoggedTask> tasks;
};

// Bars or a chunk, by name, that were learned or recalled.
struct LoggedBars {
  Written<std::string> what;
  std::optional<BarRange> bars;  // none when `what` names a chunk
  std::optional<Written<double>> minutes;
};

// A run-through. Whatever is left blank is not reported.
struct LoggedRun {
  Place at;
  std::optional<std::vector<Written<int>>> slips;
  std::vector<Written<int>> rejoined;
  std::optional<bool> recorded;
  std::optional<bool> listener;

  bool told() const { return slips || !rejoined.empty() || recorded || listener; }
};

// An entry for a day. Whatever is left blank is not reported.
struct LoggedDay {
  Written<Date> date;
  std::optional<Written<std::string>> piece;  // its number in the programme, or its title
  std::optional<Place> all;                   // `done: all`
  std::vector<Written<std::string>> done;     // codes; numbers alone are given the date's: "0105-2"
  std::optional<Written<double>> minutes;
  std::optional<std::vector<Written<int>>> slips;  // bars
  std::vector<Written<int>> mended;                // of the slips, bars learned again after a pass
  std::vector<Written<int>> hit;                   // cue starts, by number
  std::vector<Written<int>> missed;
  std::vector<LoggedRun> runs;
  std::vector<LoggedBars> learned;
  std::vector<LoggedBars> recalled;

  bool tells() const {
    return all || !done.empty() || minutes || (slips && !slips->empty()) || !hit.empty() ||
           !missed.empty() || !runs.empty() || !learned.empty() || !recalled.empty();
  }
};

struct Log {
  Source source;
  std::vector<LoggedEdition> editions;  // in the order of the file
  std::vector<LoggedDay> days;          // in the order of the file
  int unread = 0;                       // errors in what else is written; 0 for a log read whole
};

}  // namespace cahier
