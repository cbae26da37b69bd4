// Rule 3, and the names and order of a day's tasks.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

constexpr double kSliver = 1e-9;  // of a minute

double sum_of_minutes(const Day& day) {
  double sum = 0;
  for (const Task& task : day.tasks) sum += task.minutes;
  return sum;
}

// A single run-through that no day could hold, alone, and the plan says so.
bool is_run_alone(const Day& day, double longest_allowance) {
  return day.tasks.size() == 1 && day.tasks[0].drill == Drill::run_through &&
         day.tasks[0].steps.size() == 1 && day.tasks[0].steps[0].times == 1 &&
         day.tasks[0].minutes > longest_allowance && day.note == DayNote::run_alone;
}

void check_allowances(IndexedPlan& indexed) {
  double longest = 0;
  for (const Day& day : indexed.plan.days) longest = std::max(longest, day.allowance);
  for (const Day& day : indexed.plan.days) {
    if (day.allowance < 0 || (day.off && day.allowance > 0))
      indexed.violation(3, Kind::allowance_of_a_day_off,
                        fmt::format("{} is off, or has {} minutes", iso(day.date), day.allowance));
    if (day.tasks.empty()) continue;
    const double minutes = sum_of_minutes(day);
    if (day.off || day.allowance <= 0)
      indexed.violation(3, Kind::work_on_a_day_off,
                        fmt::format("{} has work but is no practice day", iso(day.date)));
    else if (minutes > day.allowance + kSliver && !is_run_alone(day, longest))
      indexed.violation(
          3, Kind::over_the_allowance,
          fmt::format("{} holds {} minutes but allows {}", iso(day.date), minutes, day.allowance));
  }
}

void check_names(IndexedPlan& indexed) {
  std::set<std::string> seen;
  std::set<std::string> months_and_days;
  for (const Day& day : indexed.plan.days) {
    const std::chrono::year_month_day date{day.date};
    const std::string prefix = fmt::format("{:02}{:02}", static_cast<unsigned>(date.month()),
                                           static_cast<unsigned>(date.day()));
    // In a plan of more than a year a date comes back, and its numbers go on.
    const bool first_time = months_and_days.insert(prefix).second;
    int number = 0;
    for (const Task& task : day.tasks) {
      if (number == 0 && !first_time)
        while (seen.count(fmt::format("{}-{}", prefix, number + 1)) > 0) ++number;
      if (task.id != fmt::format("{}-{}", prefix, ++number))
        indexed.violation(0, Kind::task_name,
                          fmt::format("task {} on {} should be called {}-{}", task.id,
                                      iso(day.date), prefix, number));
      if (!seen.insert(task.id).second)
        indexed.violation(0, Kind::task_name, fmt::format("two tasks are called {}", task.id));
    }
  }
}

void check_minutes_and_sitting(IndexedPlan& indexed, const Moment& moment, const Task& task) {
  const double halves = task.minutes * 2;
  if (!(task.minutes > 0) || std::abs(halves - std::round(halves)) > kSliver)
    indexed.violation(3, Kind::no_half_minutes,
                      fmt::format("{} takes {} minutes, which is no number of half minutes",
                                  in_words(indexed, moment), task.minutes));
  const int before = moment.task > 0 ? indexed.task({moment.day, moment.task - 1}).block : 0;
  const int latest = moment.task > 0 ? before + 1 : 0;
  if (task.block < before || task.block > latest)
    indexed.violation(3, Kind::sitting_out_of_turn,
                      fmt::format("{} stands in sitting {}, out of turn", in_words(indexed, moment),
                                  task.block + 1));
}

}  // namespace

void check_calendar(IndexedPlan& indexed) {
  check_allowances(indexed);
  check_names(indexed);
  int learning_day = -1;
  indexed.each_planned([&](const Moment& moment, const Task& task) {
    check_minutes_and_sitting(indexed, moment, task);
    if (task.drill == Drill::learn) learning_day = moment.day;
    if (task.drill == Drill::recall && learning_day == moment.day)
      indexed.violation(0, Kind::recall_not_cold,
                        in_words(indexed, moment) + " comes after new work; recall is cold");
  });
}

}  // namespace cahier
