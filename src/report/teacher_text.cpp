#include "report/teacher_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "report/plan_words.h"
#include "text/phrasing.h"
#include "text/rows.h"
#include "text/wrap.h"

namespace cahier {
namespace {

constexpr std::size_t kMostNamed = 8;  // bars or dates in one sentence

constexpr std::optional<std::string_view> word_of(Lack lack) {
  switch (lack) {
    case Lack::first_run_late:
      return "first_run_late";
    case Lack::first_run_missing:
      return "first_run_missing";
    case Lack::runs_far_apart:
      return "runs_far_apart";
    case Lack::runs_at_the_end:
      return "runs_at_the_end";
    case Lack::runs_on_one_day:
      return "runs_on_one_day";
    case Lack::last_day_full:
      return "last_day_full";
    case Lack::section_not_whole:
      return "section_not_whole";
    case Lack::half_not_whole:
      return "half_not_whole";
    case Lack::seam_late:
      return "seam_late";
    case Lack::seams_slow:
      return "seams_slow";
    case Lack::no_slow_pass:
      return "no_slow_pass";
    case Lack::no_counted_pass:
      return "no_counted_pass";
    case Lack::one_slow_pass:
      return "one_slow_pass";
    case Lack::one_counted_pass:
      return "one_counted_pass";
    case Lack::fork_seldom:
      return "fork_seldom";
    case Lack::fork_not_growing:
      return "fork_not_growing";
    case Lack::fork_early:
      return "fork_early";
    case Lack::temper_share:
      return "temper_share";
    case Lack::temper_at_the_end:
      return "temper_at_the_end";
    case Lack::temper_too_often:
      return "temper_too_often";
    case Lack::temper_before_pass:
      return "temper_before_pass";
    case Lack::temper_before_weaker:
      return "temper_before_weaker";
    case Lack::temper_in_place:
      return "temper_in_place";
    case Lack::cue_inside_phrase:
      return "cue_inside_phrase";
    case Lack::pass_inside_phrase:
      return "pass_inside_phrase";
    case Lack::recall_inside_phrase:
      return "recall_inside_phrase";
    case Lack::rejoin_inside_phrase:
      return "rejoin_inside_phrase";
    case Lack::rejoin_before_fork:
      return "rejoin_before_fork";
    case Lack::pickup_twice:
      return "pickup_twice";
    case Lack::thin_days:
      return "thin_days";
    case Lack::free_weekdays:
      return "free_weekdays";
    case Lack::learned_early:
      return "learned_early";
    case Lack::learned_late:
      return "learned_late";
    case Lack::two_new:
      return "two_new";
    case Lack::new_in_blocks:
      return "new_in_blocks";
    case Lack::few_recalls:
      return "few_recalls";
    case Lack::hard_bars_rest:
      return "hard_bars_rest";
    case Lack::first_recall_fast:
      return "first_recall_fast";
    case Lack::tempo_leaps:
      return "tempo_leaps";
    case Lack::never_near_tempo:
      return "never_near_tempo";
    case Lack::one_tempo:
      return "one_tempo";
    case Lack::beats_mixed:
      return "beats_mixed";
    case Lack::later_first:
      return "later_first";
    case Lack::pieces_mixed:
      return "pieces_mixed";
    case Lack::gaps_off:
      return "gaps_off";
    case Lack::gap_too_long:
      return "gap_too_long";
  }
  return std::nullopt;
}

constexpr auto kWords = rows<Lack, word_of>();

// The first of them, and how many more.
std::string named(const Words& words, std::vector<std::string> items) {
  if (items.size() <= kMostNamed + 1) return list_text(words, items);
  const int more = static_cast<int>(items.size() - kMostNamed);
  items.resize(kMostNamed);
  std::string text;
  for (const std::string& item : items) text += (text.empty() ? "" : ", ") + item;
  return words.count("teacher.and_more", more, {{"items", text}});
}

// "bar 5", "bars 1–4 and 9–12".
std::string bars_text(const Words& words, std::vector<BarRange> bars) {
  std::ranges::sort(bars);
  std::vector<std::string> items;
  int count = 0;
  for (const BarRange& range : bars) {
    items.push_back(bar_range(range.first, range.last));
    count += range.size();
  }
  return words.count("teacher.bars", count, {{"bars", named(words, std::move(items))}});
}

std::string dates_text(const Words& words, const std::vector<Date>& dates,
                       std::string (*say)(const Words&, Date)) {
  std::vector<std::string> items;
  for (const Date date : dates) items.push_back(say(words, date));
  return named(words, std::move(items));
}

// At most one decimal, so rounded that what is short does not look as if it were not.
std::string found_text(const Shortfall& shortfall) {
  const double tenths = shortfall.found * 10;
  const bool too_little = shortfall.found < shortfall.wanted;
  return number_text((too_little ? std::floor(tenths + 1e-6) : std::ceil(tenths - 1e-6)) / 10);
}

std::string say_mend(const Words& words, const Shortfall& shortfall) {
  const auto window = [&](std::string_view key) {
    return words.say(key, {{"first", day_month(words, shortfall.window->first)},
                           {"last", day_month(words, shortfall.window->last)}});
  };
  switch (shortfall.mend) {
    case Mend::unsaid:
      return {};
    case Mend::more_minutes:
      return window("teacher.more_minutes");
    case Mend::fewer_days_off:
      return window("teacher.fewer_days_off");
    case Mend::later_date:
      return words.say("teacher.later_date");
  }
  return {};
}

}  // namespace

std::span<const std::string_view> lack_words() { return kWords; }

std::string say_shortfall(const Words& words, const Plan& plan, const Shortfall& shortfall) {
  const std::string_view word = kWords[static_cast<std::size_t>(shortfall.lack)];
  std::string text = shortfall.piece ? piece_mark(plan, *shortfall.piece) : "";
  text += words.say(fmt::format("teacher_asks.{}", word),
                    {{"bars", bars_text(words, shortfall.bars)},
                     {"dates", dates_text(words, shortfall.dates, day_month_short)},
                     {"weekdays", dates_text(words, shortfall.dates, weekday_long)},
                     {"found", found_text(shortfall)},
                     {"wanted", number_text(shortfall.wanted)}});
  const std::string mend = say_mend(words, shortfall);
  return mend.empty() ? text : text + " " + mend;
}

std::string teacher_text(const Plan& plan, const Words& words) {
  if (!plan.fits) return {};
  std::string text;
  for (const QualityFigure& figure : quality(plan))
    for (const Shortfall& shortfall : figure.why)
      text += wrap("  ", {say_shortfall(words, plan, shortfall)}, "", 4);
  return text.empty() ? text : "\n" + words.say("teacher.heading") + "\n" + text;
}

}  // namespace cahier
