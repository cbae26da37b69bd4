#include "score/bars.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace cahier {
namespace {

bool is_plain_number(const std::string& text) {
  return !text.empty() &&
         std::ranges::all_of(text, [](char letter) { return letter >= '0' && letter <= '9'; });
}

bool is_short(const ScoreMeasure& measure) {
  return measure.meter && measure.length < measure.meter->length;
}

// Whether `next` has no number of its own after `measure`.
bool continues_bar(const ScoreMeasure& measure, const ScoreMeasure& next) {
  return next.implicit || !is_plain_number(next.number) || next.number == measure.number;
}

}  // namespace

std::vector<ScoreBar> join_bars(const std::vector<ScoreMeasure>& measures) {
  std::vector<ScoreBar> bars;
  for (std::size_t at = 0; at < measures.size(); ++at) {
    const ScoreMeasure& first = measures[at];
    const int element = static_cast<int>(at) + 1;
    ScoreBar bar{element, element, first.number, first.length,
                 at == 0 && is_short(first) && first.length > Quarters()};
    while (at + 1 < measures.size() && is_short(first) && is_short(measures[at + 1]) &&
           continues_bar(first, measures[at + 1]) &&
           bar.length + measures[at + 1].length <= first.meter->length) {
      ++at;
      ++bar.last;
      bar.length = bar.length + measures[at].length;
    }
    bar.pickup = bar.pickup && bar.length < first.meter->length;
    bars.push_back(std::move(bar));
  }
  return bars;
}

void number_bars(std::vector<ScoreBar>& bars, ScoreWarnings& warnings) {
  if (bars.empty()) return;
  const bool has_pickup = bars.front().pickup && bars.size() > 1;
  const auto run_on = [&](std::size_t from, int number) {
    return std::all_of(
        bars.begin() + static_cast<std::ptrdiff_t>(from), bars.end(),
        [&](const ScoreBar& bar) { return bar.printed == std::to_string(number++); });
  };
  // A pickup has no number of its own, whatever the file calls it.
  const bool after_pickup = has_pickup && run_on(1, 1);
  const bool are_printed = after_pickup || run_on(0, 1);
  int number = after_pickup || (has_pickup && !are_printed) ? 0 : 1;
  const int first = number;
  for (ScoreBar& bar : bars) bar.number = number++;
  if (!are_printed)
    warnings.add(0, fmt::format("the printed bar numbers do not run on from 0 or 1; bars are "
                                "counted from {} instead",
                                first));
}

void warn_of_bars(const std::vector<ScoreMeasure>& measures, const std::vector<ScoreBar>& bars,
                  ScoreWarnings& warnings) {
  std::map<std::string, int> seen;
  int again = 0;
  for (const ScoreBar& bar : bars) {
    const ScoreMeasure& first = measures[static_cast<std::size_t>(bar.first) - 1];
    if (!seen.emplace(bar.printed, bar.first).second && ++again == 1)
      warnings.add(bar.first, fmt::format("the number {} is printed a second time; bars are told "
                                          "apart by their place in the score",
                                          bar.printed));
    if (first.meter && bar.length > first.meter->length)
      warnings.add(bar.first,
                   fmt::format("this bar has {} quarter notes, and {} has {}", bar.length.text(),
                               first.meter->text, first.meter->length.text()));
  }
}

}  // namespace cahier
