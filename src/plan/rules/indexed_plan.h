// What the checker's rules share: the plan indexed by bar, chunk and day, and the violations found.
// What was done before the plan began counts for every rule, but is not checked itself: it is what
// it is.
#pragma once

#include <compare>
#include <deque>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "plan/plan.h"
#include "plan/rules/violation.h"

namespace cahier {

// Where a task stands in the plan; later days, and later tasks of a day, compare greater.
struct Moment {
  int day = -1;
  int task = -1;
  auto operator<=>(const Moment&) const = default;
};

// A chunk, or its image in a return, as it stands in the piece.
struct Occurrence {
  BarRange bars;
  int chunk = -1;      // -1 where no chunk holds the bars
  bool whole = false;  // all of the chunk's bars, not a return's share of them
};

// How weak the log makes a chunk.
struct Weakness {
  SlipCount slips;
  std::optional<Date> last_slip;
  int level = 2;        // the piece's, or more
  bool raised = false;  // it slips more than the piece's own level lets expect
};

// One piece, indexed. Vectors "by bar" are indexed with the printed bar number.
struct IndexedPiece {
  const PlannedPiece* planned = nullptr;
  int index = 0;
  std::vector<int> learned_bar;         // by bar: whose notes it has
  std::vector<int> section_at;          // by bar; -1 for none
  std::vector<int> chunk_at;            // by bar: the chunk that holds its notes; -1 for none
  std::vector<int> occurrence_at;       // by bar
  std::vector<Occurrence> occurrences;  // in bar order
  std::map<int, int> past_fork;         // starts that lead past a fork: bar, and where that ends
  std::vector<std::optional<Moment>> learned;  // by chunk: its first learn task
  std::vector<std::vector<int>> recalled;      // by bar learned: days on which it was recalled
  std::vector<Weakness> weakness;              // by chunk, from the record

  const std::vector<Chunk>& chunks() const { return planned->chunks; }
  // Chunks of which a bar is played in `bars`, sorted.
  std::vector<int> touched(const BarRange& bars) const;
  // nullptr when there is none. REQUIRES cue starts in the order of their numbers.
  const CueStart* find_cue(int number) const;
};

struct IndexedPlan {
  const Plan& plan;
  // The plan's days, after those from the first on which something was done; of those the days on
  // which nothing was done are kept in `idle`.
  std::vector<const Day*> days{};
  std::deque<Day> idle{};
  int first = 0;  // index of the plan's first day
  std::vector<IndexedPiece> pieces{};
  std::vector<Violation> found{};

  void violation(int rule, Violation::Kind kind, std::string what) {
    found.push_back({rule, kind, std::move(what)});
  }
  int day_count() const { return static_cast<int>(days.size()); }
  const Task& task(const Moment& moment) const { return days[moment.day]->tasks[moment.task]; }
  bool is_past(const Moment& moment) const { return moment.day < first; }

  // Calls visit(moment, task) for every task in order: what was done, and then what is planned.
  template <typename Visit>
  void each_task(Visit visit) const {
    for (int day = 0; day < day_count(); ++day) {
      const auto& tasks = days[day]->tasks;
      for (int number = 0; number < static_cast<int>(tasks.size()); ++number)
        visit(Moment{day, number}, tasks[number]);
    }
  }
  // The same without what is past.
  template <typename Visit>
  void each_planned(Visit visit) const {
    each_task([&](const Moment& moment, const Task& task) {
      if (!is_past(moment)) visit(moment, task);
    });
  }
};

// A drill that tests memory: recall, cue starts, slow and counted passes, run-throughs. Decided
// here anew, so that a slip in the planner's own list cannot hide itself.
bool is_retrieval(Drill drill);

// "bars 5-8" or "bar 5".
std::string in_words(const BarRange& bars);
// "2027-01-04, task 0104-1 (recall, bars 5-8)".
std::string in_words(const IndexedPlan& indexed, const Moment& moment);

}  // namespace cahier
