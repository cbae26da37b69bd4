// Figure 11: after the last new bars, fewer and fuller days rather than crumbs. It holds where at
// least 14 practice days follow the last new bars of all pieces, the last two not counted.
//
// The date leaves far more time than the work needs where a weekday's days of work are all thin:
// that weekday could be free.
#include <algorithm>
#include <array>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

bool is_thin(const Day& day, const Method& method) {
  return day.minutes() < day.allowance * method.crumbs - 1e-9;
}

// A day of each weekday that has work more than once, and always thinly.
std::vector<Date> free_weekdays(const std::vector<const Day*>& worked, const Method& method) {
  std::array<int, 7> all{};
  std::array<int, 7> thin{};
  std::array<Date, 7> one{};
  for (const Day* day : worked) {
    const int weekday = weekday_index(day->date);
    ++all[weekday];
    thin[weekday] += is_thin(*day, method) ? 1 : 0;
    one[weekday] = day->date;
  }
  std::vector<Date> free;
  for (int weekday = 0; weekday < 7; ++weekday)
    if (all[weekday] > 1 && thin[weekday] == all[weekday]) free.push_back(one[weekday]);
  return free;
}

}  // namespace

Figure use_of_time(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::use_of_time);
  const Method& method = placed.plan->method;
  const auto last = placed.last_new();
  std::vector<const Day*> practice;
  for (const Day& day : placed.plan->days)
    if (last && day.date > *last && day.allowance > 0) practice.push_back(&day);
  if (static_cast<int>(practice.size()) < numbers::kDaysToFill + numbers::kLastNotFilled)
    return std::nullopt;
  practice.resize(practice.size() - numbers::kLastNotFilled);
  std::erase_if(practice, [](const Day* day) { return day->tasks.empty(); });
  std::vector<Date> thin;
  for (const Day* day : practice)
    if (is_thin(*day, method)) thin.push_back(day->date);
  const double worked = std::max<double>(1, static_cast<double>(practice.size()));
  if (!figure.at_most(static_cast<double>(thin.size()) / worked, numbers::kMostThin)) {
    figure.lacks({.lack = Lack::thin_days,
                  .dates = thin,
                  .found = static_cast<double>(thin.size()),
                  .wanted = static_cast<double>(practice.size() / 4)});
    if (const auto free = free_weekdays(practice, method); !free.empty())
      figure.lacks({.lack = Lack::free_weekdays, .dates = free});
  }
  return figure.take();
}

}  // namespace cahier::figures
