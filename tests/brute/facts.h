// One piece with one chunking, as bit sets and half minutes: everything a day can hold and what it
// costs. Says nothing of how work should be spread.
//
// What counts as a drill: a join, recall or pass goes over whole passages (a chunk where it stands,
// or its image in a return), any number of neighbours, over section boundaries too; slow and
// counted passes are never quicker than a recall and are left out; a cue start retrieves the chunks
// surely played from end to end. A chunk's minutes are the time model's. Temper is no part of it: a
// plan without it fits as well.
#pragma once

#include <cstdint>
#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/terms.h"

namespace cahier::brute {

using Mask = std::uint32_t;  // a set of chunks, joins or fork pairs, by index

inline bool holds(Mask all, Mask some) { return (all & some) == some; }

// Neighbouring passages that are played in one go.
struct Range {
  BarRange bars;
  Mask chunks = 0;
  Mask joins = 0;    // played across
  int recall = 0;    // half minutes
  int join = 0;      // half minutes
  int section = -1;  // the section that holds it; -1 for a range over several
};

// A session of cue starts.
struct Starts {
  std::vector<int> cues;
  Mask chunks = 0;   // surely played from end to end
  Mask touched = 0;  // of which any bar is played
  Mask forks = 0;    // pairs of look-alikes whose forks it plays into
  int cost = 0;      // half minutes
};

struct Facts {
  // REQUIRES: `anatomy` outlives the facts; at most 6 chunks, and returns that cut no chunk.
  Facts(const Analysis& of, const Terms& terms);

  const Analysis& analysis;
  int chunks = 0;
  Mask all = 0;    // every chunk
  Mask joins = 0;  // every join that must be played
  int join_count = 0;
  Mask forks = 0;  // every pair of look-alikes
  int fork_count = 0;
  std::vector<int> learn;           // by chunk, half minutes
  std::vector<Mask> rivals;         // by chunk: not new on the same day
  std::vector<Mask> fork_passages;  // by pair: chunks learned before the drill counts
  std::vector<Range> ranges;
  std::vector<Starts> starts;
  int run = 0;  // half minutes
};

}  // namespace cahier::brute
