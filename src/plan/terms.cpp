#include "plan/terms.h"

#include <algorithm>

namespace cahier {

Terms settle(Date from, Date by, const Wishes& wishes, const Method& method) {
  Terms terms;
  terms.from = from;
  terms.by = by;
  terms.method = method;
  terms.minutes.fill(method.minutes);
  if (wishes.minutes) terms.minutes = *wishes.minutes;
  terms.days_off = wishes.days_off.value_or(DaysOff{});
  terms.blocks = wishes.blocks.value_or(method.blocks);
  terms.lesson = wishes.lesson;
  terms.order = wishes.order.value_or(Order::forward);
  terms.new_to_performing = wishes.new_to_performing.value_or(false);
  terms.temper = wishes.temper.value_or(Temper::weak);
  terms.dice = wishes.dice.value_or(Throw::two_dice);
  return terms;
}

double longest_day(const Terms& terms) {
  return *std::max_element(terms.minutes.begin(), terms.minutes.end());
}

std::vector<Day> calendar(const Terms& terms) {
  std::vector<Day> result;
  for (Date date = terms.from; date < terms.by; date += days{1}) {
    const int weekday = weekday_index(date);
    const bool named_off = std::any_of(terms.days_off.dates.begin(), terms.days_off.dates.end(),
                                       [&](const DateSpan& span) { return span.contains(date); });
    Day day;
    day.date = date;
    day.off = terms.days_off.weekdays[weekday] || named_off || terms.minutes[weekday] <= 0;
    day.allowance = day.off ? 0 : terms.minutes[weekday];
    day.lesson = terms.lesson == weekday;
    result.push_back(std::move(day));
  }
  return result;
}

}  // namespace cahier
