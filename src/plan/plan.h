// A plan: what to practise on which day. Plain data; the scheduler fills it, the checker
// examines it, the sheets print it.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "piece/forks.h"
#include "piece/piece.h"
#include "practice/dice_tables.h"
#include "practice/drill.h"
#include "practice/method.h"
#include "practice/record.h"
#include "practice/slip_chance.h"
#include "text/date.h"

namespace cahier {

struct PlannedSection {
  std::string name;
  BarRange bars;
  std::optional<BarRange> same_as;
};

struct Chunk {
  std::string id;  // "A1"
  BarRange bars;
  int section = 0;    // index into the sections
  int level = 2;      // the piece's, or the weakness that the log shows, where that is more
  SlipCount slips{};  // from memory, as the log tells
  std::optional<Date> last_slip{};
  bool raised = false;  // whether it slips more than the piece's own level lets expect
};

// A place to begin from memory.
struct CueStart {
  int number = 1;  // from 1; it stays the same in every edition
  int bar = 1;
  int section = 0;
  int weight = 1;       // its share of the dice: one that leads into weak bars has more
  bool is_new = false;  // of a later edition: not in the workbook before
};

// A piece cut up for practice.
struct PlannedPiece {
  Piece piece;
  std::vector<PlannedSection> sections;  // every bar in exactly one, in bar order
  std::vector<Chunk> chunks;             // every bar outside a return in exactly one, in bar order
  // By number: in bar order those of the first edition, then those that each later one adds.
  std::vector<CueStart> cues;
  std::vector<DiceTable> dice;  // together each cue start once
  std::vector<Fork> forks{};    // forks_of(piece)
  std::vector<int> rejoin{};    // bars to go on from after a slip in a run-through, rising

  std::vector<ThrownCue> thrown_cues() const {
    std::vector<ThrownCue> thrown;
    for (const CueStart& cue : cues) thrown.push_back({cue.number, cue.weight, cue.bar});
    return thrown;
  }
  std::vector<CueStart> cues_by_bar() const;
};

// From one bar to another, which need not be the next.
struct PlayedWay {
  int at = 1;
  int to = 2;
  bool goes_on = false;  // from where the way before it leads to, without a start of its own
  auto operator<=>(const PlayedWay&) const = default;
};

struct Step {
  std::vector<std::string> parts;   // played
  std::vector<std::string> spoken;  // said meanwhile; only for spoken parts
  int times = 1;
};

// Why a task stands on its day; worded by the catalogue.
enum class Reason {
  none,
  new_material,
  first_night,   // first recall after a night
  best_gap,      // the best gap for the days left (`reason_number`)
  last_chance,   // the longest gap allowed ends here
  slips,         // it slips more than it should: sooner than the rest
  sooner,        // new, hard, or not yet near its tempo: sooner than the best gap asks
  joins_new,     // new chunks meet their neighbours
  joins_return,  // into or out of a return
  fork,          // the way on parts before bar `reason_number`
  every_start,   // so that each cue start is met
  whole,         // everything is learned
  section,       // a section without stopping, before the halves
  half,          // half the piece without stopping, before the whole
  recorded,      // a run-through of the second half: to be recorded
  listener,      // one of the last: somebody listens
  weakest_first,
  worthwhile,  // a day with hardly anything else
};

// From this bar on, beats a minute.
struct TempoFrom {
  int bar = 1;
  double per_minute = 0;
  bool operator==(const TempoFrom&) const = default;
};

struct Task {
  std::string id;  // "0104-1"
  int piece = 0;   // index into the plan's pieces
  Drill drill = Drill::learn;
  BarRange bars;            // for cue starts from the first assigned bar to the last
  std::vector<int> chunks;  // surely played from end to end; indices into the piece's chunks
  std::vector<Step> steps;
  std::optional<double> tempo;  // beats a minute, a metronome mark; none where nothing is played
  Beat beat = Beat::quarter;    // what the tempo counts
  // Where there are several, all of them by bar, the first being `tempo`.
  std::vector<TempoFrom> tempi;
  double minutes = 0;     // a multiple of one half
  int block = 0;          // which of the day's sittings, from 0; a break between them
  std::vector<int> cues;  // cue starts assigned, by number
  int throws = 0;         // of the dice, besides those assigned
  // Of cue starts: from each bar begun from to where that start ends, as they stand; of what is
  // past also those that are no cue starts today.
  std::vector<BarRange> from_starts;
  bool fork = false;  // a cue-start task that is a fork drill
  // Of a fork drill: the bars before and after each fork and each way back that is played.
  std::vector<PlayedWay> ways{};
  // Where a way leads out of `bars` into another tempo: that of the bar it leads to.
  std::vector<TempoFrom> tempi_after_jumps{};
  Reason reason = Reason::none;
  int reason_number = 0;

  // At a bar that is played. REQUIRES: tempo.
  double tempo_at(int bar) const {
    double at = *tempo;
    for (const TempoFrom& from : tempi)
      if (from.bar <= bar) at = from.per_minute;
    for (const TempoFrom& from : tempi_after_jumps)
      if (from.bar == bar) at = from.per_minute;
    return at;
  }

  // The bars surely played, as they stand.
  std::vector<BarRange> played() const {
    return drill == Drill::cue_starts ? from_starts : std::vector{bars};
  }
};

enum class DayNote { none, run_alone, catch_up, everything_learned, last_day };

struct Day {
  Date date;
  double allowance = 0;  // minutes; 0 on a day off
  bool off = false;
  bool lesson = false;
  DayNote note = DayNote::none;
  std::vector<Task> tasks;

  double minutes() const;  // of all tasks
};

enum class Why {
  no_room_to_learn,
  no_room_to_recall,
  no_room_to_join,
  no_room_to_prove,
  no_room_to_run,
  no_room_to_temper
};

// Required work that found no place.
struct Unplaced {
  int piece = 0;
  Drill drill = Drill::learn;
  BarRange bars;
  double minutes = 0;
  Why why = Why::no_room_to_learn;
};

// Kinds of work that give way when time is short, the first to go first.
enum class GaveWay {
  write_outs,
  spoken_parts,
  recalls,            // three soon after learning
  second_passes,      // of each kind
  fewer_passes,       // than the last workbook set for the same days; so for what follows
  fork_drills,        // the second and the third
  sections,           // whole, and halves
  more_run_throughs,  // than the number asked for: growing ones, not too far apart
  fewer_run_throughs,
  fewer_joins,
  passes,        // any slow or counted one of some bars
  run_throughs,  // some of the number asked for: only when the last days hold no more,
  forks,         // as what follows
  joins,
  gaps,
};

// A change under which the real planner finds a plan that fits.
struct Remedy {
  std::string say;  // the words to type: "--minutes 22"
  double asks = 0;  // how much it asks; smaller is easier
};

// What happens when learning takes longer than planned.
struct Sensitivity {
  double learning = 1;           // times the planned minutes
  std::optional<int> days_late;  // 0 when it still fits; none when a year more is not enough
};

struct Plan {
  Date from;
  Date by;
  bool fits = true;
  std::string programme;  // title of a programme of several pieces; may be empty
  Method method;          // as used
  Temper temper = Temper::weak;
  Order order = Order::forward;
  bool new_to_performing = false;
  int blocks = 1;
  std::vector<PlannedPiece> pieces;
  std::vector<Day> days;  // every calendar day from `from` to the day before `by`
  // What was done before `from`, as the log tells: the days with something done, by date, their
  // tasks without ids; empty for a first edition.
  std::vector<Day> past;
  Record record;
  bool upkeep = false;  // of what is learned, for a later date
  std::vector<Unplaced> unplaced;
  // What was asked for, or what a rule asks for where the days can hold it, and gave way to what
  // counts more: the plan fits all the same.
  std::vector<Unplaced> let_go;
  std::vector<GaveWay> gave_way;  // by kind, in order; see gave_way.h
  std::vector<Remedy> remedies;
  std::vector<Sensitivity> sensitivity;  // only where asked for; see sensitivity.h

  double minutes_total() const;
  TaskCounts counts_from(Date date) const;

  int runs_required() const {
    return new_to_performing ? method.run_throughs_new : method.run_throughs;
  }
};

}  // namespace cahier
