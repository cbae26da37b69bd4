// What the player asked for and what the method gives where they asked for nothing: everything a
// plan depends on besides the pieces.
#pragma once

#include <vector>

#include "piece/wishes.h"
#include "plan/plan.h"
#include "practice/method.h"
#include "text/date.h"

namespace cahier {

struct Terms {
  Date from;
  Date by;
  Method method;
  WeekMinutes minutes{};
  DaysOff days_off;
  int blocks = 1;
  std::optional<int> lesson;
  Order order = Order::forward;
  bool new_to_performing = false;
  Temper temper = Temper::weak;
  Throw dice = Throw::two_dice;
  Record record;        // what was done before `from`
  bool upkeep = false;  // everything is learned; keep it until `by`

  int runs_required() const {
    return new_to_performing ? method.run_throughs_new : method.run_throughs;
  }
};

// Wishes where they are given, the method's numbers where not.
Terms settle(Date from, Date by, const Wishes& wishes, const Method& method);

// Minutes of the longest weekday.
double longest_day(const Terms& terms);

// Every calendar day from `from` to the day before `by`, empty of tasks.
std::vector<Day> calendar(const Terms& terms);

}  // namespace cahier
