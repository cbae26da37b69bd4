// The program's own plan, read from its JSON, as an assignment for rules.mzn.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "cut_work.h"
#include "task_minutes.h"

namespace exact {

// "6 chunks, piano, 14 days …"
std::string in_words(const SmallWork& work);

std::vector<Bars> chunks_of(const judge::Plan& plan);

// Whether every task takes the minutes that are worked out here, every day has its allowance, and
// every chunk its level. What differs is written to `faults`.
bool compare(const judge::Plan& plan, const SmallWork& work, const TaskMinutes& minutes, int halves,
             std::ostream& faults);

class GivenPlan {
 public:
  // A pass is taken for the recall that it is. REQUIRES: the plan is that of the work, cut as in
  // `cut`.
  GivenPlan(const judge::Plan& plan, const SmallWork& work, const CutWork& cut);

  // Changes the plan so that it breaks a rule: "minutes" (rule 3), "join" (4), "recalls", "night"
  // (5), "runs", "late" (6), "twins", "fork" (8). Throws std::runtime_error when that cannot be
  // done.
  void spoil(const std::string& how);

  // The half minutes of a day that the model is to allow, where the plan has so many.
  int room(int halves) const { return room_ > 0 ? room_ : halves; }
  // With the days of learning, the run-throughs, recalls, joins and the most starts.
  void write(std::ostream& out) const;

 private:
  void take(const judge::Task& task, int day);

  const SmallWork& work_;
  const CutWork& cut_;
  int room_ = 0;                                 // half minutes a day; 0 for those of the plan
  std::vector<int> learn_;                       // by chunk: the practice day, from 1
  std::vector<int> runs_, starts_;               // by practice day
  std::vector<std::vector<int>> recall_, join_;  // by practice day and passage: how many
};

}  // namespace exact
