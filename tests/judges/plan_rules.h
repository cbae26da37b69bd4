// The ten rules that every plan must keep, judged from its JSON alone.
#pragma once

#include <set>
#include <string>
#include <vector>

#include "judged_plan.h"

namespace judge {

// What was asked for and cannot be read from the plan; the method's numbers by default.
struct Asked {
  int repetitions = 5;
  int runs = 5;
  int run_days = 3;
  int quiet_days = 2;
  int chunk_least = 2;
  int chunk_most = 4;
  int first_recall_days = 3;
  int weak_level = 4;
  std::string temper = "weak";
};

// The best gap in days between two recalls when `left` days remain: log-log between the points for
// horizons of 10, 43, 82 and 377 days, the ends continued. Source: Cepeda, Vul, Rohrer, Wixted,
// Pashler 2008, Psychological Science 19(11):1095-1102; gaps of 3, 8, 12, 27 days for delays of 7,
// 35, 70, 350 days after them.
double best_gap(double left);

// Every breach of a rule, as "rule N: …". Of a plan that does not fit only what is placed is
// judged.
std::vector<std::string> breaches(const Plan& plan, const Asked& asked);

// The rules one by one, for each piece; `say` takes what is wrong.
class Judge {
 public:
  Judge(const Plan& plan, const Asked& asked) : plan_(plan), asked_(asked) {}
  std::vector<std::string> all();

 private:
  // When something is played: the day, and its place among the day's tasks.
  using When = std::pair<int, int>;
  struct Placed {
    When when;
    const Task* task;
  };

  void say(int rule, const std::string& what);
  void judge_calendar();
  void judge_chunks(const Piece& piece);
  void judge_learning(const Piece& piece, int index);
  void judge_joins(const Piece& piece);
  void judge_recalls(const Piece& piece);
  std::set<int> bars_played(const Piece& piece, const Placed& placed) const;
  void judge_chunks_named(const Piece& piece, const Placed& placed);
  void judge_gaps(const std::string& what, int learned, const std::set<int>& days);
  void judge_runs(const Piece& piece);
  void judge_cues(const Piece& piece);
  void judge_dice(const Piece& piece);
  void judge_look_alikes(const Piece& piece);
  void judge_ways(const Piece& piece);
  void judge_rejoin(const Piece& piece);
  void judge_fork(const Piece& piece, const LookAlikes& alike, int fork);
  void judge_temper(const Piece& piece);
  bool passed_before(const Piece& piece, int chunk, int day) const;

  bool is_past(const Placed& placed) const { return placed.when.first < plan_.first; }
  bool beside_what_was_learned(const Piece& piece, const Chunk& chunk) const;
  int day_of(int chunk) const;  // when it is learned; -1 when never
  std::set<int> chunks_in(const Piece& piece, Bars bars) const;
  std::string at(const Placed& placed) const;

  const Plan& plan_;
  const Asked& asked_;
  std::vector<Placed> tasks_;  // of the piece being judged, in order
  std::vector<When> learned_;  // of each chunk; {-1, -1} when never
  std::vector<std::string> breaches_;
};

}  // namespace judge
