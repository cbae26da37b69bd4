#include "text/phrasing.h"

#include <fmt/format.h>

#include <cmath>

namespace cahier {
namespace {

std::chrono::year_month_day calendar(Date date) { return std::chrono::year_month_day{date}; }
int year_of(Date date) { return static_cast<int>(calendar(date).year()); }
std::size_t month_index(Date date) { return static_cast<unsigned>(calendar(date).month()) - 1; }

}  // namespace

std::string weekday_long(const Words& words, Date date) {
  return words.list("weekdays.long").at(weekday_index(date));
}

std::string weekday_short(const Words& words, Date date) {
  return words.list("weekdays.short").at(weekday_index(date));
}

std::string month_long(const Words& words, Date date) {
  return words.list("months.long").at(month_index(date));
}

std::string month_short(const Words& words, Date date) {
  return words.list("months.short").at(month_index(date));
}

int day_of_month(Date date) {
  return static_cast<int>(static_cast<unsigned>(calendar(date).day()));
}

std::string day_month(const Words& words, Date date) {
  return words.say("dates.day_month",
                   {{"day", day_of_month(date)}, {"month", month_long(words, date)}});
}

std::string day_month_short(const Words& words, Date date) {
  return words.say("dates.day_month",
                   {{"day", day_of_month(date)}, {"month", month_short(words, date)}});
}

std::string day_month_year(const Words& words, Date date) {
  return words.say(
      "dates.day_month_year",
      {{"day", day_of_month(date)}, {"month", month_long(words, date)}, {"year", year_of(date)}});
}

std::string weekday_day_month(const Words& words, Date date) {
  return words.say("dates.weekday_day_month", {{"weekday", weekday_long(words, date)},
                                               {"day", day_of_month(date)},
                                               {"month", month_long(words, date)}});
}

std::string full_date(const Words& words, Date date) {
  return words.say("dates.full", {{"weekday", weekday_long(words, date)},
                                  {"day", day_of_month(date)},
                                  {"month", month_long(words, date)},
                                  {"year", year_of(date)}});
}

std::string date_span(const Words& words, Date first, Date last) {
  if (first == last) return day_month_year(words, first);
  if (year_of(first) != year_of(last))
    return words.say("dates.span_of_years", {{"first", day_month_year(words, first)},
                                             {"last", day_month_year(words, last)}});
  if (month_index(first) != month_index(last))
    return words.say("dates.span_of_months", {{"first", day_month(words, first)},
                                              {"last", day_month(words, last)},
                                              {"year", year_of(first)}});
  return words.say("dates.span_of_days", {{"first", day_of_month(first)},
                                          {"last", day_of_month(last)},
                                          {"month", month_long(words, first)},
                                          {"year", year_of(first)}});
}

std::string bar_range(int first, int last) {
  return first == last ? std::to_string(first) : fmt::format("{}–{}", first, last);
}

std::string minutes_text(double minutes) {
  const long halves = std::lround(std::abs(minutes) * 2);
  const std::string sign = minutes < 0 && halves > 0 ? "-" : "";
  if (halves == 1) return sign + "½";
  return fmt::format("{}{}{}", sign, halves / 2, halves % 2 != 0 ? "½" : "");
}

std::string number_text(double number) {
  std::string text = fmt::format("{:.1f}", number);
  if (text.ends_with(".0")) text.resize(text.size() - 2);
  return text == "-0" ? "0" : text;
}

std::string list_text(const Words& words, const std::vector<std::string>& items) {
  if (items.empty()) return {};
  std::string text = items.front();
  for (std::size_t at = 1; at + 1 < items.size(); ++at)
    text = words.say("lists.more", {{"before", text}, {"next", items[at]}});
  if (items.size() > 1) text = words.say("lists.last", {{"before", text}, {"next", items.back()}});
  return text;
}

}  // namespace cahier
