// The kinds of work, and what is true of each.
#pragma once

#include <span>
#include <string_view>

namespace cahier {

struct Method;

enum class Stage { build, prove, temper };

enum class Drill {
  learn,         // a chunk, parts apart and then together
  join,          // slowly through neighbouring chunks
  recall,        // cold, score shut
  cue_starts,    // from a place to begin, no run-up
  slow_pass,     // a stretch much slower
  counted_pass,  // a stretch while counting aloud
  run_through,   // first bar to last, no stopping
  spoken_part,   // one part played, another spoken
  write_out,     // from memory on blank staves
  silent_run     // a stretch or the whole in the head
};

// What one task of a drill is about, and is named by.
enum class Covers {
  chunk,   // one chunk, by its bars
  bars,    // a stretch of any length, by its bars
  starts,  // the cue starts of its numbers, and throws of the dice
  piece    // always the whole piece; several at once are counted
};

// What is played in a task, and how often.
enum class Manner {
  apart_then_together,  // every part alone, then all: the method's repetitions of each
  together,             // all parts, once; of cue starts once from each
  spoken_in_turn        // as spoken_steps() gives it
};

enum class AtTempo {
  of_learning,  // the method's for each level
  share,        // a number of the method, a share of the performance tempo
  full,         // the performance tempo
  none          // nothing is played
};

// The parts of a day, one after another.
enum class DayPart {
  cold,   // from memory, before any other playing
  fresh,  // what is new, the hardest first
  after
};

// Whether it stands on the method's last, quiet days before the date.
enum class LastDays {
  never,       // nothing new
  if_it_must,  // what can wait no longer
  welcome
};

// Where slips of memory are written down; they count as trials of the bars played.
enum class Slips {
  nowhere,         // it is no test of memory
  with_the_day,    // on the day's panel, in the log among `slips`
  on_start_sheet,  // on the sheet of cue starts, in the log among `slips` all the same
  with_the_run     // on the tally of run-throughs; the log must say how each went
};

// Everything that is the same for all tasks of a drill. The rows stand in drill.cpp.
struct DrillFacts {
  Drill drill;
  // In plan --json, in logs, and the end of its keys in the catalogue: "cue_starts".
  std::string_view word;
  // In what is said about a log, in English: "cue start".
  std::string_view noun;
  // The catalogue's key for a number of them, "weeks.recalls"; of learning, which is not counted,
  // the key for "new".
  std::string_view counted;
  Stage stage;
  Covers covers;
  Manner manner;
  // What it is played at; `share` is the method's number where there is one, else null. At another
  // level than 2 the share follows the tempo of learning.
  AtTempo tempo;
  double Method::*share;
  // Its part of the day, and its rank in that part: the lower comes first, the last can end a day,
  // as something known, and played. What is new goes by level instead.
  DayPart part;
  int rank;
  LastDays last_days;
  // A test of memory that counts as recalling what it covers.
  bool retrieves;
  // The score lies open, to read from; with every other drill it is shut until afterwards.
  bool takes_score;
  // It cannot be done away from the instrument.
  bool needs_instrument;
  // It plays neighbouring chunks across their join with care enough to count.
  bool plays_across;
  // Its bars are played without a stop between them, so that two neighbouring stretches are not the
  // same as one long one.
  bool in_one_go;
  Slips slips;
};

// In the order of the enumeration.
std::span<const DrillFacts> every_drill();
const DrillFacts& facts_of(Drill drill);

inline std::string_view drill_word(Drill drill) { return facts_of(drill).word; }
inline Stage stage_of(Drill drill) { return facts_of(drill).stage; }
inline bool retrieves(Drill drill) { return facts_of(drill).retrieves; }
inline bool covers(Drill drill, Covers what) { return facts_of(drill).covers == what; }

std::string_view stage_word(Stage stage);

}  // namespace cahier
