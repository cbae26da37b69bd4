// Work that no rule asks for and a teacher would want, where a day has room for it.
#pragma once

#include <functional>
#include <map>
#include <utility>
#include <vector>

#include "plan/schedule/draft.h"

namespace cahier {

class WelcomeWork {
 public:
  // REQUIRES: `draft` outlives this object.
  explicit WelcomeWork(Draft& draft) : draft_(draft) {}

  // What is new until it came back three times, what slips, and what is not near its tempo: sooner
  // than the best gap asks.
  void recall_sooner(int day);

  // Hard bars, which come back more often than the others.
  void recall_hard(int day);

  // Each section whole, soon after it is learned; those alone that press, or all.
  enum class Sections { that_press, all };
  void play_sections(int day, Sections which = Sections::all);

  // Slow and counted passes over what is learned whole, one of each even when the date leaves no
  // time for its recalls to come round, two where there are weeks for them.
  void pass(int day);

  // Seams out of sections that come back, again and again, where no fork drill plays them.
  void join_returns(int day);

  // More work for a day that has some, rather than crumbs: what is weak, then further passes. Fewer
  // and fuller days follow, since what is played now need not be played tomorrow. For when
  // everything is learned.
  void fill_up(int day);

  // A silent play-through, where the day is one of work and has minutes left when all else has its
  // place: the whole piece if they reach, else a whole section that is learned, in turn. One a day,
  // and not within the method's days of the last.
  void play_silently(int day);

 private:
  void recall(int day, const std::function<std::vector<Want>(const PieceProgress&)>& wanted);
  int passes_wanted(const PieceProgress& progress) const;
  // Puts the task where the day has room for it.
  bool put(PieceProgress& progress, Task task, int day);
  bool has_room(int day) const;
  bool is_full(int day) const;
  // Whether so much of the day's allowance has its work.
  bool uses(int day, double share) const;
  int last_silent(const PieceProgress& progress) const;

  Draft& draft_;
  std::map<const PieceProgress*, std::pair<int, int>> silent_;  // last day, last section
};

}  // namespace cahier
