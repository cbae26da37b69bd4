#include "plan/search/levers.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "practice/numbers.h"

namespace cahier {
namespace {

std::string minutes_words(const WeekMinutes& minutes) {
  const bool even = std::all_of(minutes.begin(), minutes.end(),
                                [&](double each) { return each == minutes.front(); });
  if (even) return fmt::format("--minutes {:g}", minutes.front());
  std::string words;
  for (int weekday = 0; weekday < 7; ++weekday)
    if (minutes[weekday] > 0)
      words += fmt::format("{}{}:{:g}", words.empty() ? "--minutes " : ",", kWeekdays[weekday],
                           minutes[weekday]);
  return words;
}

// Every practice weekday's minutes grow alike, in whole minutes of the longest day.
Lever more_minutes(const Terms& terms) {
  const double longest = *std::max_element(terms.minutes.begin(), terms.minutes.end());
  const auto grown = [&terms, longest](int step) {
    WeekMinutes minutes = terms.minutes;
    for (double& each : minutes) each = std::ceil(each * (std::floor(longest) + step) / longest);
    return minutes;
  };
  return {longest > 0 ? static_cast<int>(numbers::kMostLeverMinutes - std::floor(longest)) : 0, 2,
          [grown](Terms& changed, int step) { changed.minutes = grown(step); },
          [grown](int step) { return minutes_words(grown(step)); },
          [longest](int step) { return (std::floor(longest) + step - longest) / longest; }};
}

// Whether every weekday is like every other, so that it does not matter on which a date falls.
bool week_is_even(const Terms& terms) {
  const auto& off = terms.days_off.weekdays;
  return std::none_of(off.begin(), off.end(), [](bool each) { return each; }) &&
         std::all_of(terms.minutes.begin(), terms.minutes.end(),
                     [&](double each) { return each == terms.minutes.front(); });
}

// More days, at one end or the other.
Lever more_days(const Terms& terms, std::string option, Date Terms::*end, int sign, int most) {
  const auto moved = [&terms, end, sign](int step) { return terms.*end + days{sign * step}; };
  const double planned = static_cast<double>((terms.by - terms.from).count());
  return {most, date_ripple(terms),
          [moved, end](Terms& changed, int step) { changed.*end = moved(step); },
          [moved, option](int step) { return option + " " + iso(moved(step)); },
          [planned](int step) { return step / planned; }};
}

Lever fewer_repetitions(const Terms& terms) {
  const int now = terms.method.repetitions;
  return {now - numbers::kFewestRepetitions, 1,
          [now](Terms& changed, int step) { changed.method.repetitions = now - step; },
          [now](int step) { return fmt::format("--repetitions {}", now - step); },
          [now](int step) { return static_cast<double>(step) / now; }};
}

Lever larger_chunks(const Terms& terms) {
  const Method& method = terms.method;
  const int now = method.chunk_most;
  return {numbers::kMostLeverChunk - now, numbers::kMostLeverChunk,
          [&method, now](Terms& changed, int step) {
            const Method larger = method.with_chunks_up_to(now + step);
            changed.method.chunk_most = larger.chunk_most;
            changed.method.chunk_minutes = larger.chunk_minutes;
          },
          [now](int step) { return fmt::format("--chunk-bars {}", now + step); },
          [now](int step) { return static_cast<double>(step) / now; }};
}

}  // namespace

int date_ripple(const Terms& terms) { return week_is_even(terms) ? 2 : 7; }

std::vector<Lever> levers(const Terms& terms, std::optional<Date> earliest_start) {
  // What was done fixes the first day.
  const int days_before =
      !terms.record.done.empty() ? 0
      : earliest_start ? static_cast<int>(std::clamp<long>((terms.from - *earliest_start).count(),
                                                           0, numbers::kMostDaysMoved))
                       : numbers::kMostDaysMoved;
  std::vector<Lever> all = {more_minutes(terms),
                            more_days(terms, "--by", &Terms::by, 1, numbers::kMostDaysMoved),
                            more_days(terms, "--from", &Terms::from, -1, days_before),
                            fewer_repetitions(terms), larger_chunks(terms)};
  std::erase_if(all, [](const Lever& lever) { return lever.steps < 1; });
  return all;
}

}  // namespace cahier
