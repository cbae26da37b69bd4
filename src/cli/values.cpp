#include "cli/values.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

#include "piece/occasion.h"
#include "text/utf8.h"

namespace cahier {
namespace {

std::vector<std::string> split(const std::string& text, char at) {
  std::vector<std::string> parts;
  std::size_t begin = 0;
  while (true) {
    const std::size_t end = text.find(at, begin);
    parts.push_back(text.substr(begin, end - begin));
    if (end == std::string::npos) return parts;
    begin = end + 1;
  }
}

std::optional<double> plain_number(const std::string& text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = std::from_chars(text.data(), end, value);
  if (read.ec != std::errc() || read.ptr != end || !std::isfinite(value)) return std::nullopt;
  return value;
}

}  // namespace

void Values::refuse(std::string_view option, const std::string& message, const std::string& hint,
                    MessageKind kind) {
  diagnostics_.error(typed_.source(), typed_.value_of(option), message, hint, kind);
}

void Values::refuse_argument(std::string_view argument, int occurrence, const std::string& message,
                             const std::string& hint, MessageKind kind) {
  diagnostics_.error(typed_.source(), typed_.argument(argument, occurrence), message, hint, kind);
}

std::optional<Date> Values::date(std::string_view option, const std::string& text) {
  const std::optional<Date> date = parse_date(text);
  if (!date)
    refuse(option, fmt::format("\"{}\" is not a valid date", text),
           "write year, month and day, as in 2027-03-20");
  return date;
}

std::optional<double> Values::millimetres(std::string_view option, const std::string& text,
                                          double least, double most) {
  std::string figures = text;
  if (figures.ends_with("mm")) {
    figures.resize(figures.size() - 2);
    while (figures.ends_with(' ')) figures.pop_back();
  }
  const std::optional<double> value = plain_number(figures);
  if (value && *value >= least && *value <= most) return value;
  refuse(
      option, fmt::format("\"{}\" is not a valid value for {}", text, option),
      fmt::format("write millimetres from {0:g} to {1:g}, as in 8, 8mm or \"10 mm\"", least, most));
  return std::nullopt;
}

std::optional<int> Values::whole(std::string_view option, const std::string& text, int least,
                                 int most, std::string_view unit) {
  const std::optional<double> value = plain_number(text);
  if (value && *value >= least && *value <= most && *value == std::floor(*value))
    return static_cast<int>(*value);
  refuse(option, fmt::format("\"{}\" is not a valid value for {}", text, option),
         fmt::format("write a whole number of {} from {} to {}", unit, least, most));
  return std::nullopt;
}

std::optional<WeekMinutes> Values::minutes(std::string_view option, const std::string& text) {
  constexpr std::string_view kHint =
      "write one number for every day, as in 15, or one for each weekday, as in mon:15,sat:30; at "
      "most 480 minutes, and more than 0 on at least one day";
  WeekMinutes week{};
  bool good = true;
  if (const auto every = plain_number(text)) {
    week.fill(*every);
    good = *every > 0 && *every <= 480;
  } else {
    for (const std::string& part : split(text, ',')) {
      const std::size_t colon = part.find(':');
      const auto weekday = parse_weekday(part.substr(0, colon));
      const auto number =
          colon == std::string::npos ? std::nullopt : plain_number(part.substr(colon + 1));
      if (weekday && number && *number >= 0 && *number <= 480)
        week[*weekday] = *number;
      else
        good = false;
    }
    good = good && *std::max_element(week.begin(), week.end()) > 0;
  }
  if (good) return week;
  refuse(option, fmt::format("\"{}\" is not a valid value for --minutes", text),
         std::string(kHint));
  return std::nullopt;
}

std::optional<DaysOff> Values::days_off(std::string_view option, const std::string& text) {
  DaysOff off;
  for (const std::string& part : split(text, ','))
    if (!parse_day_off(part, off)) {
      refuse(
          option, fmt::format("\"{}\" is not a weekday, a date or a range of dates", part),
          "write weekdays, dates or ranges of dates, as in sun,2027-02-14,2027-02-20..2027-02-23");
      return std::nullopt;
    }
  return off;
}

std::optional<int> Values::weekday(std::string_view option, const std::string& text) {
  const std::optional<int> weekday = parse_weekday(text);
  if (!weekday)
    refuse(option, fmt::format("\"{}\" is not a weekday", text),
           "write mon, tue, wed, thu, fri, sat or sun");
  return weekday;
}

std::optional<bool> Values::yes_no(std::string_view option, const std::string& text) {
  if (text == "yes" || text == "true" || text == "on") return true;
  if (text == "no" || text == "false" || text == "off") return false;
  refuse(option, fmt::format("\"{}\" is neither yes nor no", text), "write yes or no");
  return std::nullopt;
}

std::string Values::name(std::string_view option, const std::string& text) {
  const std::vector<char32_t> characters = decode_utf8(text);
  const bool is_blank = std::ranges::all_of(characters, [](char32_t one) { return one == U' '; });
  if (text.empty()) return text;
  if (!first_invalid_utf8(text) && !is_blank && characters.size() <= kLongestName &&
      std::ranges::none_of(characters, is_control))
    return text;
  refuse(option, fmt::format("this is no name for {}", option),
         fmt::format("write a name of {} characters at most, on one line", kLongestName));
  return "";
}

}  // namespace cahier
