// How fast each chunk is recalled, on its way from the tempo of learning to the full one.
#pragma once

#include <vector>

#include "plan/chunks/analysis.h"
#include "plan/plan.h"
#include "practice/numbers.h"

namespace cahier {

class TempoSteps {
 public:
  // `end` is the date. REQUIRES: `analysis` and `method` outlive this object.
  TempoSteps(const Analysis& analysis, const Method& method, int end);

  // Everything is at the performance tempo already.
  void is_at_tempo() { at_tempo_ = true; }

  // The day of the next run-through, before which the tempo is to be reached; `first` says whether
  // none was made before.
  void be_at_tempo_by(int day, bool first) {
    at_tempo_by_ = day;
    first_run_to_come_ = first;
  }

  void learned(int chunk, int day) { learned_[chunk] = day; }
  // The chunks of `task` were recalled at its tempo.
  void recalled(const Task& task, const std::vector<int>& chunks);

  // The chunks were recalled before the plan, of which no log tells the tempo: each time a step up.
  void climbed(const std::vector<int>& chunks);

  // How far these chunks, played together, are on the way from the tempo at which the hardest was
  // learned, 0, to the performance tempo, 1.
  double progress(const std::vector<int>& chunks, int day) const;

  // All of it was played through at the performance tempo.
  void ran_through() { ran_through_ = true; }

  // The same for the tempo at which each was last recalled, or else learned: for starts, which
  // nothing has prepared on their day.
  double reached_progress(const std::vector<int>& chunks) const;

  // Whether it is time for a recall at the method's proved tempo, before the first run-through.
  bool wants_tempo(int chunk, int day) const;

 private:
  double learn_share(int chunk) const;
  // What the method allows, less a little, as marks are rounded: the first recall against the tempo
  // of learning, and the most that the tempo rises from one recall to the next.
  double first_step() const { return method_.first_recall_tempo - numbers::kFirstRecallSpare; }
  double step() const { return method_.tempo_step - numbers::kTempoStepSpare; }
  double share(int chunk, int day) const;
  template <typename ShareOf>
  double progress_by(const std::vector<int>& chunks, ShareOf share_of) const;

  const Analysis& analysis_;
  const Method& method_;
  int end_;
  std::vector<int> learned_;     // by chunk: day, or -1
  std::vector<double> reached_;  // by chunk: share of the tempo at its last recall, 0 for none
  std::vector<int> near_tempo_;  // by chunk: recalls at the proved tempo or above
  int at_tempo_by_ = -1;
  bool first_run_to_come_ = true;
  bool at_tempo_ = false;
  bool ran_through_ = false;
};

}  // namespace cahier
