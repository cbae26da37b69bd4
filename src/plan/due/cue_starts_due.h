// The work of Prove and Temper that is not a recall of what is due: fork drills, cue starts, spoken
// parts and write-outs.
#pragma once

#include <vector>

#include "plan/due/forks_due.h"
#include "plan/due/recalls_due.h"
#include "plan/due/task_maker.h"
#include "plan/terms.h"

namespace cahier {

class CueStartsDue {
 public:
  // Takes from `forks` what it places. REQUIRES: everything passed in outlives this object.
  CueStartsDue(const Analysis& analysis, const Terms& terms, ForksDue& forks);

  // The day's tasks within `room` minutes. `position` is the day's place among the practice days;
  // `set_aside` the first day from today on for which the whole is set aside, or -1; `begun`
  // whether the day has work already, so that it is worth sitting down for; `fill` the minutes that
  // would make it a full one.
  std::vector<Task> on_day(int position, const std::vector<int>& practice_days, int end,
                           const RecallsDue& recalls, const TaskMaker& make, int set_aside,
                           double room, bool begun, double fill);

  // Cue starts begun from before the plan: each has been met, whatever the dice brought besides.
  void remember(const std::vector<int>& cues);

  // Whether one of the forks has its day.
  bool has_fork_due(int day, int end, const RecallsDue& recalls) const;

 private:
  void add_forks(int day, int end, int days_left, const RecallsDue& recalls, const TaskMaker& make,
                 double& room, std::vector<Task>& tasks);
  bool is_due(const ForksDue::Waiting& fork, int day, int end, const RecallsDue& recalls) const;
  void add_cue_starts(int position, int day, int end, const RecallsDue& recalls,
                      const TaskMaker& make, int set_aside, bool begun, double fill, double& room,
                      std::vector<Task>& tasks);
  std::vector<int> chunks_of(const std::vector<int>& cues) const;
  std::vector<int> cues_to_assign(int day, int count, const RecallsDue& recalls,
                                  int set_aside) const;

  const Analysis& analysis_;
  const Method& method_;
  ForksDue& forks_;
  std::vector<int> assigned_;  // by cue number - 1: how often
  int last_session_ = -100;    // position of the last session of cue starts
};

}  // namespace cahier
