// What the figures share: the tasks of each piece in order, what was done first and then what is
// planned, and what they make of its bars.
#pragma once

#include <optional>
#include <vector>

#include "plan/plan.h"
#include "practice/time_model.h"

namespace cahier {

struct PlacedTask {
  const Task* task = nullptr;
  Date date;
  int order = 0;  // rises from task to task, through all days and pieces
  bool past = false;
};

struct LearnedChunk {
  Date date;
  int order = 0;
  bool past = false;
};

struct RunDay {
  Date date;
  int times = 1;
  bool past = false;
};

struct PlacedPiece {
  const Plan* plan = nullptr;
  const PlannedPiece* planned = nullptr;
  int index = 0;
  TimeModel time;
  std::vector<PlacedTask> tasks{};
  std::vector<int> learned_bar{};                      // by bar: whose notes it has
  std::vector<int> chunk_at{};                         // by bar: that holds its notes; -1 for none
  std::vector<std::optional<LearnedChunk>> learned{};  // by chunk
  // The day of the last new bars; none where a chunk is never learned. Of a piece that is kept,
  // everything is taken to be learned when the plan begins.
  std::optional<Date> last_new{};

  const Method& method() const { return plan->method; }
  // Whether the date leaves so many days after the last new bars.
  bool leaves(int days_wanted) const;
  // When the last of these bars is learned; nothing where one is not.
  std::optional<LearnedChunk> learned_in(BarRange bars) const;
  // The days with run-throughs from the last new bars on, in order.
  std::vector<RunDay> runs() const;
};

struct PlacedPlan {
  const Plan* plan = nullptr;
  std::vector<PlacedPiece> pieces{};

  // Of all pieces; none where a chunk is never learned.
  std::optional<Date> last_new() const;
};

// REQUIRES: the plan outlives the result.
PlacedPlan place_tasks(const Plan& plan);

// Played from memory with every bar between in its place: a recall, a slow or a counted pass.
bool plays_whole(Drill drill);
inline bool is_pass(Drill drill) {
  return drill == Drill::slow_pass || drill == Drill::counted_pass;
}

// A pickup does not count.
int counted_bars(BarRange bars);
// Bars in rising order, neighbours put together.
std::vector<BarRange> as_ranges(const std::vector<int>& bars);
// Sorted, each bar once, neighbours put together.
std::vector<BarRange> put_together(std::vector<BarRange> bars);

}  // namespace cahier
