#include "workbook/parts/short_dates.h"

#include "text/phrasing.h"

namespace cahier {
namespace {

int year_of(Date date) { return static_cast<int>(std::chrono::year_month_day{date}.year()); }

}  // namespace

std::string short_date(const Words& words, const Plan& plan, Date date) {
  if (year_of(plan.from) == year_of(plan.by)) return day_month_short(words, date);
  return words.say(
      "dates.day_month_year",
      {{"day", day_of_month(date)}, {"month", month_short(words, date)}, {"year", year_of(date)}});
}

}  // namespace cahier
