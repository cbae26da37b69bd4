#include "text/date.h"

#include <fmt/core.h>

#include <algorithm>

namespace cahier {
namespace {

using std::chrono::year_month_day;

std::optional<int> digits(std::string_view text) {
  int value = 0;
  for (const char letter : text) {
    if (letter < '0' || letter > '9') return std::nullopt;
    value = value * 10 + (letter - '0');
  }
  return value;
}

}  // namespace

std::optional<Date> parse_date(std::string_view text) {
  if (text.size() != 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto year = digits(text.substr(0, 4));
  const auto month = digits(text.substr(5, 2));
  const auto day = digits(text.substr(8, 2));
  if (!year || !month || !day || *year < 1900 || *year > 2999) return std::nullopt;
  const year_month_day date{std::chrono::year{*year},
                            std::chrono::month{static_cast<unsigned>(*month)},
                            std::chrono::day{static_cast<unsigned>(*day)}};
  if (!date.ok()) return std::nullopt;
  return Date{date};
}

std::string iso(Date date) {
  const year_month_day day{date};
  return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(day.year()),
                     static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()));
}

int weekday_index(Date date) {
  return static_cast<int>(std::chrono::weekday{date}.iso_encoding()) - 1;
}

std::optional<int> parse_weekday(std::string_view text) {
  const auto found = std::find(kWeekdays.begin(), kWeekdays.end(), text);
  if (found == kWeekdays.end()) return std::nullopt;
  return static_cast<int>(found - kWeekdays.begin());
}

IsoWeek iso_week(Date date) {
  // A week belongs to the year that holds its Thursday (ISO 8601).
  const int weekday = weekday_index(date) + 1;
  const Date thursday = date + days{4 - weekday};
  const auto year = year_month_day{thursday}.year();
  const Date new_year{year / std::chrono::January / 1};
  const auto week = (thursday - new_year).count() / 7 + 1;
  return {static_cast<int>(year), static_cast<int>(week), weekday};
}

}  // namespace cahier
