// What was really done: bars and dates, whatever the chunks and cue starts are called in the
// workbook that comes next.
#pragma once

#include <optional>
#include <vector>

#include "piece/bar_range.h"
#include "piece/wishes.h"
#include "practice/drill.h"
#include "text/date.h"

namespace cahier {

// One drill, done once.
struct Done {
  Date date;
  int piece = 0;  // index
  Drill drill = Drill::recall;
  BarRange bars;            // as printed; of cue starts from the first bar begun from to the last
  std::vector<int> starts;  // cue starts: the bars begun from, how it went not told
  std::vector<int> hit;     // cue starts: bars begun from, and it held
  std::vector<int> missed;  // cue starts: bars begun from in vain
  std::optional<double> minutes;  // it took, where that was written down
  // Bars of lapses; none where nobody said. A drill reported as done without a word of slips had
  // none; a run-through's must be told.
  std::optional<std::vector<int>> slips;
  // Of the slips, the bars that were mended afterwards: learned again with the score.
  std::vector<int> mended;
  // Of run-throughs only.
  std::vector<int> rejoined;  // bars jumped forward to
  std::optional<bool> recorded;
  std::optional<bool> listener;
};

// The minutes of a whole day, where they were written down.
struct DayMinutes {
  Date date;
  double minutes = 0;
};

// New bars that a workbook set for a day that passed without them.
struct MissedBars {
  int piece = 0;  // index
  BarRange bars;  // as printed, those not learned since either
  Date set_for;
};

// Tasks of some kinds, counted.
struct TaskCounts {
  int passes = 0;  // slow and counted
  int joins = 0;
  int run_throughs = 0;
};

// What became of the workbook before.
struct LastEdition {
  int number = 1;
  Date from;
  std::optional<double> minutes;  // a day, the most of a week, that it was planned with
  int tasks = 0;                  // that it set before the new first day
  int tasks_done = 0;
  int bars_new = 0;      // that it set to be learned before the new first day
  int bars_learned = 0;  // that were learned since it began
  int days_behind = 0;   // days of new bars that are still to be made up; less than 0 when ahead
  std::vector<MissedBars> missed{};  // by date
  // What it set for the days from the new first day on; none where that cannot be told.
  std::optional<TaskCounts> ahead{};
};

// What an earlier workbook threw for its cue starts, as far as the log tells: by piece, the bars of
// starts 1, 2, 3 … and their shares, nothing where it does not tell.
struct ThrownStarts {
  int edition = 1;
  Throw dice = Throw::two_dice;
  std::vector<std::vector<int>> bars;
  std::vector<std::vector<int>> shares;
};

// The cue starts of a piece as its workbooks have numbered them so far: what was printed once stays
// valid.
struct NumberedStarts {
  std::vector<int> bars;  // of starts 1, 2, 3 …, each once
  int before = 0;         // how many of them the last workbook has; the rest are the new one's own
};

struct Record {
  int edition = 1;                  // of the workbook to come
  std::vector<Done> done;           // by date
  std::vector<DayMinutes> minutes;  // by date
  std::optional<LastEdition> last;
  std::vector<ThrownStarts> thrown{};    // by edition
  std::vector<NumberedStarts> starts{};  // by piece; none before the first workbook

  bool empty() const { return done.empty() && minutes.empty() && !last; }
};

}  // namespace cahier
