// Rule 5: what is learned is recalled in time, bar by bar.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "plan_rules.h"

namespace judge {
namespace {

bool from_memory(const std::string& drill) {
  return drill == "recall" || drill == "slow_pass" || drill == "counted_pass" ||
         drill == "run_through" || drill == "cue_starts";
}

}  // namespace

double best_gap(double left) {
  constexpr std::array<std::pair<double, double>, 4> kPoints = {
      {{10, 3}, {43, 8}, {82, 12}, {377, 27}}};
  std::size_t next = 1;
  while (next + 1 < kPoints.size() && left > kPoints[next].first) ++next;
  const auto [t0, g0] = kPoints[next - 1];
  const auto [t1, g1] = kPoints[next];
  const double slope = std::log(g1 / g0) / std::log(t1 / t0);
  return g0 * std::pow(left / t0, slope);
}

// Where they are learned, the bars that a task plays for certain. Of what is past, chunks
// named may have been begun from bars that are no cue starts today.
std::set<int> Judge::bars_played(const Piece& piece, const Placed& placed) const {
  const Task& task = *placed.task;
  std::set<int> played;
  const auto play = [&](Bars bars) {
    for (int bar = bars.first; bar <= bars.last; ++bar) played.insert(piece.learned_as(bar));
  };
  if (task.drill != "cue_starts") {
    play(task.bars);
    return played;
  }
  for (const int number : task.cues) {
    const int bar = piece.cues.at(static_cast<std::size_t>(number) - 1).bar;
    play({bar, piece.end_of_start(bar)});
  }
  if (is_past(placed))
    for (const int chunk : task.chunks) play(piece.chunks[chunk].bars);
  return played;
}

// Chunks named are played from end to end, and learned before.
void Judge::judge_chunks_named(const Piece& piece, const Placed& placed) {
  const std::set<int> played = bars_played(piece, placed);
  for (const int chunk : placed.task->chunks) {
    const Bars& bars = piece.chunks[chunk].bars;
    for (int bar = bars.first; bar <= bars.last; ++bar)
      if (!played.contains(bar))
        say(5, at(placed) + " names " + piece.chunks[chunk].id + " but does not play bar " +
                   std::to_string(bar));
    if (day_of(chunk) < 0 || learned_[chunk] > placed.when)
      say(5, at(placed) + " comes before " + piece.chunks[chunk].id + " is learned");
  }
}

// Bar by bar: a start inside a chunk recalls the bars from there on.
void Judge::judge_recalls(const Piece& piece) {
  std::map<int, std::set<int>> recalled;  // by bar, where it is learned
  for (const Placed& placed : tasks_) {
    const Task& task = *placed.task;
    if (task.drill == "learn") continue;
    judge_chunks_named(piece, placed);
    if (!from_memory(task.drill)) continue;
    for (const int bar : bars_played(piece, placed)) {
      const int chunk = piece.chunk_of(bar);
      if (chunk < 0) continue;
      if (!is_past(placed) && (day_of(chunk) < 0 || day_of(chunk) >= placed.when.first))
        say(5, at(placed) + " comes before a night after bar " + std::to_string(bar));
      if (placed.when.first > day_of(chunk)) recalled[bar].insert(placed.when.first);
    }
  }
  for (std::size_t chunk = 0; chunk < piece.chunks.size(); ++chunk) {
    const int learned = day_of(static_cast<int>(chunk));
    const Bars& bars = piece.chunks[chunk].bars;
    for (int bar = bars.first; learned >= 0 && bar <= bars.last; ++bar)
      if (bar == bars.first || recalled[bar] != recalled[bar - 1])
        judge_gaps(piece.chunks[chunk].id + " from bar " + std::to_string(bar), learned,
                   recalled[bar]);
  }
}

void Judge::judge_gaps(const std::string& what, int learned, const std::set<int>& days) {
  const int end = static_cast<int>(plan_.days.size());
  const auto practice_days = [&](int after, int until) {
    int count = 0;
    for (int day = after + 1; day <= std::min(until, end - 1); ++day)
      count += plan_.days[day].allowance > 0 ? 1 : 0;
    return count;
  };
  if (days.empty()) {
    if (practice_days(learned, end) > 0) say(5, what + " is never recalled");
    return;
  }
  if (practice_days(learned, *days.begin()) > asked_.first_recall_days)
    say(5, what + " is first recalled only on " + iso(plan_.days[*days.begin()].date));
  for (auto day = days.begin(); day != days.end(); ++day) {
    const auto following = std::next(day);
    const int next = following == days.end() ? end : *following;
    const int limit = static_cast<int>(std::floor(2 * best_gap(end - *day) + 0.5));
    if (next < plan_.first) continue;
    // What was overdue when the plan began comes back within its first week.
    if (*day + limit < plan_.first && practice_days(next - 1, plan_.first + 6) > 0) continue;
    if (next - *day <= limit || practice_days(*day, *day + limit) == 0) continue;
    say(5, what + " is left alone for " + std::to_string(next - *day) + " days from " +
               iso(plan_.days[*day].date) + ", at most " + std::to_string(limit));
  }
}

}  // namespace judge
