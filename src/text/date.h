// Calendar days and their ISO 8601 forms.
#pragma once

#include <array>
#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace cahier {

using Date = std::chrono::sys_days;
using std::chrono::days;

// YYYY-MM-DD of a day that exists, years 1900 to 2999; nullopt otherwise.
std::optional<Date> parse_date(std::string_view text);

// YYYY-MM-DD.
std::string iso(Date date);

// Monday 0 … Sunday 6.
int weekday_index(Date date);

// "mon" … "sun", the weekdays of the piece file and the command line in every language.
inline constexpr std::array<std::string_view, 7> kWeekdays = {"mon", "tue", "wed", "thu",
                                                              "fri", "sat", "sun"};
std::optional<int> parse_weekday(std::string_view text);

// ISO 8601 week date.
struct IsoWeek {
  int year;
  int week;
  int weekday;  // Monday 1 … Sunday 7
};
IsoWeek iso_week(Date date);

struct DateSpan {
  Date first;
  Date last;  // inclusive
  bool contains(Date date) const { return first <= date && date <= last; }
};

}  // namespace cahier
