// The numbers of a way of practising, read from templates/methods/NAME.yaml.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "text/diagnostics.h"
#include "text/source.h"

namespace cahier {

// One value for each level 1 … 5; index with level - 1.
using ByLevel = std::array<double, 5>;

struct Method {
  std::string name;   // the file's name: "steady"
  std::string about;  // one sentence

  // Chunks and learning
  int chunk_least = 2;       // bars
  int chunk_most = 4;        // bars
  double chunk_minutes = 6;  // the load a chunk should have
  int stretch_bars = 16;     // passes and recalls take at most about this many bars at a time
  int repetitions = 5;       // of every step of learning
  ByLevel learn_tempo{};     // share of the performance tempo
  ByLevel learn_stumble{};   // a repetition takes this many times its playing time
  double learn_pause = 5;    // seconds between repetitions
  double setup = 20;         // seconds to find the place, for every task
  // Learning takes so many times what the numbers above say: for asking what if. Not in the file.
  double learn_factor = 1;
  // The player's own pace, from the log: learning takes so many times the minutes, by level.
  ByLevel pace{1, 1, 1, 1, 1};

  // The other drills: shares of the performance tempo
  double join_tempo = 0.5;
  double recall_tempo = 0.7;
  double slow_tempo = 0.5;
  double counted_tempo = 0.6;
  double proved_tempo = 0.9;    // share of the tempo that bars reach before the first run-through,
  int proved_times = 2;         // so many times
  double recall_stumble = 1.2;  // a drill from memory takes this many times its playing time
  double cue_start_seconds = 45;
  int cue_throws = 4;             // throws of the dice in a session of cue starts
  int spoken_times = 2;           // one part played while another is said
  int spoken_own_times = 1;       // the part that was said, played and said
  int spoken_together_times = 1;  // at last all parts, none said
  double spoken_tempo = 0.5;
  ByLevel write_out_seconds{};  // for each bar and part
  double silent_stumble = 1.5;  // in the head the music takes this many times its playing time
  int silent_days = 7;          // from one silent play-through to the next
  double run_setup = 60;        // seconds to settle before a run-through

  // The calendar
  double minutes = 15;  // a day, where nobody says otherwise
  int blocks = 1;
  double break_minutes = 5;   // between blocks
  double break_after = 25;    // longest time at the instrument without a break, minutes
  int quiet_days = 2;         // nothing new in so many last days
  int first_recall_days = 3;  // the first recall comes within so many practice days
  int run_throughs = 5;
  int run_throughs_new = 10;  // for a player new to performing
  int run_days = 3;           // spread over at least so many days
  int runs_a_day = 2;
  int weak_level = 4;         // "weak bars only" begins at this level
  double learn_share = 0.42;  // of the practice days, for learning where the date leaves slack
  double prove_share = 0.35;  // of the practice days, kept for proving where the date allows

  // Best gap in days for a delay in days, rising (the delay runs from the last review to the date).
  struct Spacing {
    double delay;
    double gap;
  };
  std::vector<Spacing> spacing;
  double longest_gap = 2;  // times the best gap

  // What the log teaches
  ByLevel slip_chance{};          // of a passage played from memory, before anything is known
  double slip_weight = 4;         // trials that the number above counts for
  double pace_of_players = 0.35;  // spreads (standard deviations) of the logarithm of the pace:
  double pace_of_levels = 0.15;   // between players, between levels of one player,
  double pace_of_times = 0.3;     // and from one time to the next

  // The smallest size that the largest chunk may have: below it some phrases cannot be cut.
  int least_chunk_most() const { return 2 * chunk_least - 1; }
  // The same method with chunks of at most `bars` bars; a chunk's minutes change in proportion.
  // REQUIRES: bars >= least_chunk_most().
  Method with_chunks_up_to(int bars) const;
};

// Reads and checks a method file: every number with its source, all of them, none unknown.
// Adds every problem to `diagnostics`. The method is usable only when no error was added.
Method read_method(const Source& source, std::string name, Diagnostics& diagnostics);

}  // namespace cahier
