// A piece as the scheduler sees it: chunks where they stand, what must be joined, what must be
// kept apart, and how long everything takes.
#pragma once

#include <vector>

#include "plan/plan.h"
#include "practice/time_model.h"

namespace cahier {

// A chunk where it stands in the piece: itself, or all or part of it again in a return.
struct Passage {
  BarRange bars;
  int chunk = 0;
  int section = 0;
  bool in_return = false;
  BarRange learned;  // the bars of the chunk that these are
};

// Neighbouring chunks of one section that are recalled and passed through together.
struct Stretch {
  BarRange bars;
  int first_chunk = 0;
  int last_chunk = 0;  // inclusive

  std::vector<int> chunks() const {
    std::vector<int> all;
    for (int chunk = first_chunk; chunk <= last_chunk; ++chunk) all.push_back(chunk);
    return all;
  }
};

// Two neighbouring passages whose join must be played; `left` and `left + 1`.
struct Join {
  int left = 0;
  int left_chunk = 0;
  int right_chunk = 0;
};

// A drill at a fork, or at some ways of one that has many.
struct ForkDrill {
  std::vector<int> cues;        // numbers of the cue starts, one for each start
  std::vector<PlayedWay> ways;  // that are played: at least one for each start
  std::vector<int> learned;     // chunks that must have been learned: all that is played
  int bar = 0;                  // the first of the ways on
  bool required = false;        // of look-alikes: it must be drilled once
};

// What is played from one bar on.
struct StartFromCue {
  int bar = 0;
  BarRange bars;
  std::vector<int> chunks;   // surely played from end to end
  std::vector<int> touched;  // of which any bar is played
};

struct Analysis {
  PlannedPiece planned;
  TimeModel time;
  std::vector<Passage> passages;
  std::vector<Stretch> stretches;
  std::vector<BarRange> return_stretches;  // likewise of what comes back, where it comes back
  std::vector<bool> begins_phrase;         // by chunk
  std::vector<int> stretch_of;             // by chunk
  std::vector<std::vector<int>> joins_of;  // by chunk: indices of joins it takes part in
  std::vector<Join> joins;
  std::vector<ForkDrill> fork_drills;
  std::vector<std::vector<int>>
      rivals;                         // by chunk: chunks not to be learned on the same day, sorted
  std::vector<StartFromCue> starts;   // by cue number - 1, as planned.cues
  std::vector<double> learn_minutes;  // by chunk

  // Indices of the chunks that lie wholly in `bars`, themselves or by a return, in order, each
  // once.
  std::vector<int> chunks_in(BarRange bars) const;
  // The same of the chunks of which any bar is played.
  std::vector<int> chunks_touching(BarRange bars) const;
  // A start from a bar, be it a cue start or not: from a chunk's first bar, or its first in a
  // return, to its end; from inside one on to the end of the next. Cue starts before a fork reach
  // farther: those are in `starts`.
  StartFromCue start_at(int bar) const;
  StartFromCue start_over(BarRange bars) const;
  // The index of the passage that holds `bar`.
  int passage_at(int bar) const;
  // The level of the hardest chunk that `bars` touch.
  int level_in(BarRange bars) const;
};

}  // namespace cahier
