// The calendar being filled: tasks, the minutes that each day still has, and what found no place.
#pragma once

#include <memory>
#include <vector>

#include "plan/due/piece_progress.h"
#include "plan/schedule/work.h"
#include "practice/numbers.h"

namespace cahier {

class Draft {
 public:
  // `to_the_edge` as in RecallsDue; `lets_go`: what finds no place gives way instead of being
  // missed. REQUIRES: `of` outlives this object.
  Draft(const Work& of, bool to_the_edge, bool lets_go = false);

  void put(Task task, int day);
  void miss(const Task& task, Why why);
  void let_go(const Task& task, Why why);

  // Whether a task of the day can stand before this one without touching its passage.
  bool stands_apart(const Task& task, int day) const;

  // Whether a day may hold a drill that could also wait.
  bool is_welcome(Drill drill, int day) const;

  // The look-alikes whose forks wait and are ready, as far as the day has room.
  void drill_forks(PieceProgress& progress, int day);

  // The day's share of spoken and written work, as far as the day has room; `position` is its place
  // among the practice days.
  void temper(int position);

  // Sets the days of a piece's run-throughs aside: their minutes are taken from the room.
  void set_aside(PieceProgress& progress, RunDays runs);

  // The run-throughs set aside for this day, of the pieces that are learned. Their minutes were
  // taken from the room when they were set aside.
  void place_runs(int day);

  // Of a day's allowance: with fewer minutes the day is crumbs.
  double full_share() const { return work.terms.method.crumbs + numbers::kFullShareSpare; }

  // Puts the day in order and says what is special about it.
  void finish(int day);

  // Everything that found no place, or gave way; `runs` says whether run-throughs were looked for
  // at all.
  void collect_unplaced(bool runs);

  const Work& work;
  int end;  // index of the date itself
  Schedule schedule;
  std::vector<double> room;  // minutes left, by day
  std::vector<int> practice_days;
  std::vector<std::unique_ptr<PieceProgress>> pieces;  // by piece

 private:
  // Takes account of what was done before the plan begins.
  void remember(const Task& task, int day);
  // Whether the chunk tempered on that day has slipped since, so that it is to be tempered again.
  bool slipped_since(const Task& task, int day) const;
  double temper_left(int piece, int until) const;
  Reason run_reason(const PieceProgress& progress, int on) const;

  bool lets_go_;
};

}  // namespace cahier
