// A figure of a plan's quality, and why it is short.
#pragma once

#include <optional>
#include <vector>

#include "piece/bar_range.h"
#include "text/date.h"

namespace cahier {

enum class FigureKind {
  first_run_through,
  between_run_throughs,
  not_at_the_end,
  growing_stretches,
  seams,
  passes,
  forks,
  spoken_and_written,
  phrases,
  use_of_time,
  spread,
  criterion,
  hard_bars,
  tempo,
  order,
  spacing
};

// The bounds of a figure, both included.
struct Wanted {
  std::optional<double> at_least{};
  std::optional<double> at_most{};

  bool holds(double figure) const { return shortness(figure) <= 1 + 1e-9; }
  // How far a figure is from its bounds, as a ratio: at most 1 within them.
  double shortness(double figure) const;
};

// One way in which a plan falls short. What each needs of bars, dates and numbers is said beside
// it; worded by the catalogue.
enum class Lack {
  first_run_late,        // dates: the run-through; found, wanted: days after the last new bars
  first_run_missing,     // wanted: days after the last new bars
  runs_far_apart,        // dates: the two; found, wanted: days
  runs_at_the_end,       // dates: those run-throughs; found, wanted: how many
  runs_on_one_day,       // dates: the day; found: how many
  last_day_full,         // dates: the day; found, wanted: minutes
  section_not_whole,     // bars; wanted: days
  half_not_whole,        // bars; dates: the first run-through
  seam_late,             // bars: the two beside each seam; wanted: days
  seams_slow,            // found, wanted: per cent of the seams
  no_slow_pass,          // bars
  no_counted_pass,       // bars
  one_slow_pass,         // bars
  one_counted_pass,      // bars
  fork_seldom,           // bars: of the forks
  fork_not_growing,      // likewise
  fork_early,            // likewise
  temper_share,          // found, wanted: per cent of the minutes
  temper_at_the_end,     // dates
  temper_too_often,      // bars
  temper_before_pass,    // bars
  temper_before_weaker,  // bars
  temper_in_place,       // dates: of spoken and written work; bars: where something is missing
  cue_inside_phrase,     // bars: begun from
  pass_inside_phrase,    // likewise
  recall_inside_phrase,  // likewise
  rejoin_inside_phrase,  // likewise
  rejoin_before_fork,    // likewise
  pickup_twice,
  thin_days,          // dates; found, wanted: how many
  free_weekdays,      // dates: one of each weekday
  learned_early,      // found, wanted: per cent of the practice days
  learned_late,       // likewise
  two_new,            // dates
  new_in_blocks,      // dates: of the new chunks before and after; found, wanted: practice days
  few_recalls,        // bars
  hard_bars_rest,     // found, wanted: per cent of the gaps of easy bars
  first_recall_fast,  // bars
  tempo_leaps,        // bars
  never_near_tempo,   // bars: of sections
  one_tempo,          // bars: of tasks
  beats_mixed,        // dates
  later_first,        // bars
  pieces_mixed,       // dates; found: the most changes of a day; wanted
  gaps_off,           // found, wanted: per cent of the gaps
  gap_too_long        // bars
};

// What would make room for what is missing, as far as the plan alone can tell.
enum class Mend { unsaid, more_minutes, fewer_days_off, later_date };

struct Shortfall {
  Lack lack = Lack::first_run_late;
  std::optional<int> piece{};  // index; none where it is of the whole plan
  std::vector<BarRange> bars{};
  std::vector<Date> dates{};
  double found = 0;
  double wanted = 0;
  Mend mend = Mend::unsaid;
  std::optional<DateSpan> window{};  // of the days that `mend` speaks of
};

struct QualityFigure {
  FigureKind name = FigureKind::first_run_through;
  // Of several conditions, and of several pieces, the figure that falls shortest.
  double figure = 0;
  Wanted wanted;
  bool met = true;               // all conditions of all pieces
  std::vector<Shortfall> why{};  // empty where it is met
};

}  // namespace cahier
