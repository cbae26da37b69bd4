// Tasks with everything that hangs on their drill: chunks, steps, tempo, minutes.
#pragma once

#include "plan/chunks/analysis.h"
#include "plan/plan.h"

namespace cahier {

class TaskMaker {
 public:
  // REQUIRES: the anatomy and the method outlive this object.
  TaskMaker(const Analysis& analysis, const Method& method, int piece);

  Task learn(int chunk) const;
  Task join(BarRange bars) const;
  // `progress` from 0 to 1 leads from the method's tempo to the performance tempo, in metronome
  // marks; the minutes are those of the slower tempo.
  Task recall(BarRange bars, double progress = 0) const;
  Task slow_pass(BarRange bars) const;
  Task counted_pass(BarRange bars) const;
  Task run_through() const;
  // Starts at the cue starts of these numbers, and `throws` of the dice besides, which may bring
  // any. `progress` as for recalls.
  Task cue_starts(const std::vector<int>& cues, int throws, double progress = 0) const;
  Task fork_drill(const std::vector<int>& cues, std::vector<PlayedWay> ways) const;
  Task spoken_part(int chunk) const;
  Task write_out(int chunk) const;
  // The same for any drill that covers a chunk, and for any that covers bars or the whole piece.
  Task of_chunk(Drill drill, int chunk) const;
  Task of_bars(Drill drill, BarRange bars) const;
  // What such a task takes, without making it.
  double minutes(Drill drill, BarRange bars) const;

 private:
  Task begun(Drill drill, BarRange bars, double minutes) const;
  // At `share` of the performance tempo, where the drill is played at a tempo.
  void play_at(Task& task, double share) const;
  Task of_bars(Drill drill, BarRange bars, int level, double share) const;
  std::vector<Step> steps_of(Drill drill) const;
  Step together(int times) const;
  double raised(int level, double progress) const;
  int level_of(const std::vector<int>& cues) const;  // of the hardest chunk they play of

  const Analysis& analysis_;
  const Method& method_;
  int piece_;
};

}  // namespace cahier
