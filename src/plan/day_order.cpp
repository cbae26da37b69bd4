#include "plan/day_order.h"

#include <fmt/format.h>

#include <algorithm>
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

// Each block holds its share of the day's allowance; a task that would overfill a block opens the
// next one, so that a short day needs no break.
void assign_blocks(Day& day, int blocks) {
  const double size = day.allowance / blocks;
  int block = 0;
  double filled = 0;
  for (Task& task : day.tasks) {
    if (filled > 0 && filled + task.minutes > size + 0.5 && block + 1 < blocks) {
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
