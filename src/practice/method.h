// The numbers of a way of practising, read from templates/methods/NAME.yaml.
#pragma once

#include <array>
#include <string>
#include <vector>

namespace cahier {

// One value for each level 1 … 5; index with level - 1.
using ByLevel = std::array<double, 5>;

struct Method {
  std::string name;   // the file's name: "steady"
  std::string about;  // one sentence

  // Chunks and learning
  int chunk_least{};        // bars
  int chunk_most{};         // bars
  double chunk_minutes{};   // the load a chunk should have
  int stretch_bars{};       // passes and recalls take at most about this many bars at a time
  int repetitions{};        // of every step of learning
  ByLevel learn_tempo{};    // share of the performance tempo
  ByLevel learn_stumble{};  // a repetition takes this many times its playing time
  double learn_pause{};     // seconds between repetitions
  double setup{};           // seconds to find the place, for every task
  // Learning takes so many times what the numbers above say: for asking what if. Not in the file.
  double learn_factor = 1;
  // The player's own pace, from the log: learning takes so many times the minutes, by level.
  ByLevel pace{1, 1, 1, 1, 1};

  // The other drills: shares of the performance tempo
  double join_tempo{};
  double recall_tempo{};
  double slow_tempo{};
  double counted_tempo{};
  double proved_tempo{};    // share of the tempo that bars reach before the first run-through,
  int proved_times{};       // so many times
  double recall_stumble{};  // a drill from memory takes this many times its playing time
  double cue_start_seconds{};
  int cue_throws{};             // throws of the dice in a session of cue starts
  int spoken_times{};           // one part played while another is said
  int spoken_own_times{};       // the part that was said, played and said
  int spoken_together_times{};  // at last all parts, none said
  double spoken_tempo{};
  ByLevel write_out_seconds{};  // for each bar and part
  double silent_stumble{};      // in the head the music takes this many times its playing time
  int silent_days{};            // from one silent play-through to the next
  double run_setup{};           // seconds to settle before a run-through

  // The calendar
  double minutes{};  // a day, where nobody says otherwise
  int blocks{};
  double break_minutes{};   // between blocks
  double break_after{};     // longest time at the instrument without a break, minutes
  int quiet_days{};         // nothing new in so many last days
  int first_recall_days{};  // the first recall comes within so many practice days
  int run_throughs{};
  int run_throughs_new{};  // for a player new to performing
  int run_days{};          // spread over at least so many days
  int runs_a_day{};
  int weak_level{};      // "weak bars only" begins at this level
  double learn_share{};  // of the practice days, for learning where the date leaves slack
  double prove_share{};  // of the practice days, kept for proving where the date allows

  // Best gap in days for a delay in days, rising (the delay runs from the last review to the date).
  struct Spacing {
    double delay;
    double gap;
  };
  std::vector<Spacing> spacing;
  double longest_gap{};  // times the best gap
  int criterion{};       // recalls of a chunk on different days
  int criterion_days{};  // within so many days of learning
  double hard_gap{};     // of the best gap: weak bars come back after it where a day has room
  double slip_gap{};     // of the best gap: what slips comes back after it

  // From memory, piece by piece
  int join_days{};              // after these a join waits no longer for a better place in a day
  int section_days{};           // a section is played whole within so many of its last new bars
  int section_bars{};           // … so many bars at a time
  int passes{};                 // slow ones and counted ones, through every bar,
  int second_pass_days{};       // with so many days left; with fewer one of each
  double first_recall_tempo{};  // at most so many times the tempo of learning
  double tempo_step{};          // of the performance tempo, from one recall to the next
  int session_starts{};         // in a session of cue starts, besides those thrown
  int sessions_apart{};         // practice days, on days that hold nothing else or while learning
  int fork_drills{};            // of each way on at a fork
  int fork_drill_days{};        // with so many days left; with fewer one
  int last_fork_days{};         // before the date: the last of them lies within these
  double temper_share{};        // of a piece's minutes for spoken and written work, at most
  int temper_quiet_days{};      // before the date without spoken and written work

  // Run-throughs and the use of the days
  int first_run_days{};  // after the last new bars
  // With so many days left, so many lie between two run-throughs at most; rising, from 0 on.
  struct RunsApart {
    int left;
    int days;
  };
  std::vector<RunsApart> runs_apart;
  std::vector<int> last_run_days;  // before the date: the run-throughs of the last week
  std::vector<int> listener_days;  // before the date: a run-through near each is heard
  double crumbs{};                 // of a day's minutes: work that fills less is crumbs
  double least_learn_share{};      // of the practice days, for learning where there is slack
  double most_learn_share{};
  int prove_days{};  // left to prove, where learning can be over by then

  // A piece that is kept
  int upkeep_gap{};         // days after which it is first played again
  int upkeep_growth{};      // each gap so many times the one before
  int upkeep_whole_turn{};  // of so many sittings one is a run-through

  // What the log teaches
  ByLevel slip_chance{};     // of a passage played from memory, before anything is known
  double slip_weight{};      // trials that the number above counts for
  double pace_of_players{};  // spreads (standard deviations) of the logarithm of the pace:
  double pace_of_levels{};   // between players, between levels of one player,
  double pace_of_times{};    // and from one time to the next

  int days_between_runs(int left) const;

  // The smallest size that the largest chunk may have: below it some phrases cannot be cut.
  int least_chunk_most() const { return 2 * chunk_least - 1; }
  // The same method with chunks of at most `bars` bars; a chunk's minutes change in proportion.
  // REQUIRES: bars >= least_chunk_most().
  Method with_chunks_up_to(int bars) const;
};

}  // namespace cahier
