#include "plan/day_order.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace cahier {
namespace {

int rank(Drill drill) {
  switch (drill) {
    case Drill::run_through:
      return 0;
    case Drill::recall:
    case Drill::slow_pass:
    case Drill::counted_pass:
      return 1;
    case Drill::learn:
      return 2;
    case Drill::join:
      return 3;
    case Drill::cue_starts:
      return 4;
    case Drill::spoken_part:
      return 5;
    case Drill::write_out:
      return 6;
  }
  return 7;
}

// How many blocks the day falls into when none may pass `most` minutes.
int blocks_needed(const Day& day, double most) {
  int blocks = 1;
  double filled = 0;
  for (const Task& task : day.tasks) {
    if (filled > 0 && filled + task.minutes > most) {
      ++blocks;
      filled = 0;
    }
    filled += task.minutes;
  }
  return blocks;
}

// As many blocks as the day's minutes ask for, at most `blocks`, as equal as the tasks allow: the
// longest as short as can be. A day that hardly passes one block's share needs no break.
void assign_blocks(Day& day, int blocks) {
  constexpr double kHardly = 1.3;
  const double share = day.allowance / blocks;
  const int wanted =
      std::min(blocks, static_cast<int>(std::ceil(day.minutes() / (kHardly * share))));
  double most = day.minutes() / std::max(1, wanted);
  while (blocks_needed(day, most) > std::max(1, wanted)) most += 0.5;
  int block = 0;
  double filled = 0;
  for (Task& task : day.tasks) {
    if (filled > 0 && filled + task.minutes > most) {
      ++block;
      filled = 0;
    }
    task.block = block;
    filled += task.minutes;
  }
}

}  // namespace

void put_in_order(Day& day, int blocks) {
  std::stable_sort(day.tasks.begin(), day.tasks.end(),
                   [](const Task& a, const Task& b) { return rank(a.drill) < rank(b.drill); });
  if (day.tasks.size() > 1 && day.tasks[0].drill == Drill::run_through &&
      day.tasks[1].drill == Drill::run_through && day.tasks[0].piece == day.tasks[1].piece)
    std::rotate(day.tasks.begin() + 1, day.tasks.begin() + 2, day.tasks.end());
  if (!day.tasks.empty()) assign_blocks(day, blocks);
}

void number_tasks(std::vector<Day>& calendar) {
  std::map<std::pair<unsigned, unsigned>, int> numbers;
  for (Day& day : calendar) {
    const std::chrono::year_month_day date(day.date);
    const auto month = static_cast<unsigned>(date.month());
    const auto of_month = static_cast<unsigned>(date.day());
    for (Task& task : day.tasks)
      task.id = fmt::format("{:02}{:02}-{}", month, of_month, ++numbers[{month, of_month}]);
  }
}

}  // namespace cahier
