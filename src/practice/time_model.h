// How long each drill takes, from the method's numbers and the piece's tempo.
#pragma once

#include <vector>

#include "piece/piece.h"
#include "practice/drill.h"
#include "practice/method.h"

namespace cahier {

// The tempo at a bar; where the piece gives none, 80 of the meter's natural beat a minute.
Tempo tempo_or_usual(const Piece& piece, int bar);

// A section's way to the performance tempo, in shares of it.
struct TempoLadder {
  double learn = 0;
  double recall = 0;
  double proved = 0;  // to be reached before the first run-through
  double performance = 1;
};

class TimeModel {
 public:
  TimeModel(const Piece& piece, const Method& method);

  // Metronome mark for practising from `bar` at a share of the performance tempo; the whole share
  // is the tempo itself.
  double mark(int bar, double share) const;
  // The same counted in another unit of beat.
  double mark(int bar, double share, Beat unit) const;
  // Minutes to play bars once, unrepeated, at the mark for a share of the performance tempo.
  double playing(BarRange bars, double share) const;

  // Minutes of a whole task, rounded up to half a minute. Nothing takes less than half a minute.
  double learn(BarRange bars, int level) const;
  double join(BarRange bars, int level) const;
  double recall(BarRange bars, int level) const;
  // One pass, and a second one by the chance that bars had to be mended.
  double slow_pass(BarRange bars, int level) const;
  double counted_pass(BarRange bars, int level) const;
  double cue_starts(int starts) const;
  double run_through() const;
  double spoken_part(BarRange bars, int level) const;
  double write_out(BarRange bars, int level) const;
  double silent_run(BarRange bars) const;
  // The same for any drill. Of cue starts only their number counts, of a run-through nothing.
  double minutes(Drill drill, BarRange bars, int level, int starts = 0) const;

  // The share of the performance tempo that a drill is played at; 1 where nothing is played. The
  // method's numbers for drills from memory are those of level 2; they follow the tempo of learning
  // for other levels, so that nothing is joined faster than it was learned.
  double share(Drill drill, int level) const;
  TempoLadder ladder(int level) const;
  // How often a chunk is played in its spoken work, all steps together.
  int spoken_turns() const;
  // The chance that bars played from memory slip at least once, by the method's first guess: they
  // are taken for as many passages as the largest chunks they hold, each of which slips by itself.
  double slip_somewhere(BarRange bars, int level) const;
  // Steps of learning: each part alone and then together, or one step for a single part.
  int learning_steps() const;

 private:
  double from_memory(BarRange bars, double share_of_tempo, double times = 1) const;

  const Piece* piece_;
  const Method* method_;
  std::vector<double> minutes_until_;  // at performance tempo, before each bar from the first on
};

}  // namespace cahier
