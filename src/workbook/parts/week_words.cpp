#include "workbook/parts/week_words.h"

#include <fmt/format.h>

#include <algorithm>

#include "piece/short_title.h"
#include "plan/standing.h"
#include "text/phrasing.h"
#include "workbook/parts/week_stretch.h"

namespace cahier {
namespace {

constexpr std::size_t kMostRanges = 3;  // beyond that bars are counted, not named

// The stretches of a piece learned by the end of a day, before the plan's first day or in it. A
// return is never learned: it is the bars it comes back to.
std::vector<BarRange> learned_bars(const Plan& plan, int piece, Date until) {
  const PlannedPiece& planned = plan.pieces[piece];
  std::vector<bool> learned;
  for (const std::optional<Date>& before : learned_before(plan, piece))
    learned.push_back(before.has_value());
  for (const Day& day : plan.days)
    for (const Task& task : day.tasks)
      if (day.date <= until && task.piece == piece && task.drill == Drill::learn)
        for (const int chunk : task.chunks) learned[chunk] = true;
  std::vector<BarRange> ranges;
  for (std::size_t at = 0; at < planned.chunks.size(); ++at) {
    if (!learned[at]) continue;
    const BarRange bars = planned.chunks[at].bars;
    if (!ranges.empty() && ranges.back().last + 1 == bars.first)
      ranges.back().last = bars.last;
    else
      ranges.push_back(bars);
  }
  return ranges;
}

int bars_in(const std::vector<BarRange>& ranges) {
  int bars = 0;
  for (const BarRange& range : ranges) bars += range.size();
  return bars;
}

int bars_to_learn(const PlannedPiece& piece) {
  int bars = 0;
  for (const Chunk& chunk : piece.chunks) bars += chunk.bars.size();
  return bars;
}

int runs_in(const PlanWeek& week) {
  int runs = 0;
  for (const Day& day : week.days)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::run_through)
        runs += task.steps.empty() ? 1 : task.steps.front().times;
  return runs;
}

std::string bars_learned(const Words& words, const PlannedPiece& piece,
                         const std::vector<BarRange>& ranges) {
  const int to_learn = bars_to_learn(piece);
  if (bars_in(ranges) == to_learn) return words.say("week.every_bar");
  if (ranges.size() > kMostRanges)
    return words.say("week.so_many_bars", {{"some", bars_in(ranges)}, {"all", to_learn}});
  std::vector<std::string> texts;
  for (const BarRange& range : ranges) texts.push_back(bar_range(range.first, range.last));
  return words.say("week.bars", {{"bars", list_text(words, texts)}});
}

}  // namespace

bool PlanWeek::idle() const {
  return std::all_of(days.begin(), days.end(), [](const Day& day) { return day.tasks.empty(); });
}

std::vector<PlanWeek> weeks_of(const Plan& plan) {
  std::vector<PlanWeek> weeks;
  const std::span<const Day> all(plan.days);
  for (std::size_t begin = 0; begin < all.size();) {
    const std::size_t to_sunday = 7 - static_cast<std::size_t>(weekday_index(all[begin].date));
    const std::size_t size = std::min(to_sunday, all.size() - begin);
    weeks.push_back({static_cast<int>(weeks.size()) + 1, 1, all.subspan(begin, size)});
    begin += size;
  }
  for (PlanWeek& week : weeks) week.weeks = weeks.size();
  return weeks;
}

std::vector<PlanWeek> shown_weeks(const Plan& plan) {
  std::vector<PlanWeek> weeks = weeks_of(plan);
  if (plan.upkeep)
    std::erase_if(weeks, [](const PlanWeek& week) {
      return week.idle() && week.number < static_cast<int>(week.weeks);
    });
  return weeks;
}

std::vector<PlanWeek> printed_weeks(const Plan& plan, int most) {
  std::vector<PlanWeek> weeks = shown_weeks(plan);
  if (most > 0) std::erase_if(weeks, [most](const PlanWeek& week) { return week.number > most; });
  return weeks;
}

std::string iso_week_text(Date date) {
  const IsoWeek week = iso_week(date);
  return fmt::format("{}-W{:02}", week.year, week.week);
}

std::string week_title(const Words& words, const PlanWeek& week) {
  return words.say("week.title", {{"number", week.number}, {"weeks", week.weeks}});
}

std::string week_dates(const Words& words, const PlanWeek& week) {
  return words.say("week.dates", {{"dates", date_span(words, week.first(), week.last())},
                                  {"iso", iso_week_text(week.first())}});
}

std::string week_goal(const Words& words, const Plan& plan, const PlanWeek& week) {
  std::vector<std::string> new_goals;
  std::vector<const Piece*> pieces;
  for (const PlannedPiece& planned : plan.pieces) pieces.push_back(&planned.piece);
  const std::vector<std::string> titles = short_titles(pieces);
  bool every_bar = true;
  for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece) {
    const PlannedPiece& planned = plan.pieces[piece];
    const auto learned = learned_bars(plan, piece, week.last());
    every_bar = every_bar && bars_in(learned) == bars_to_learn(planned);
    if (learned == learned_bars(plan, piece, week.first() - days{1})) continue;
    const std::string bars = bars_learned(words, planned, learned);
    new_goals.push_back(
        plan.pieces.size() == 1
            ? bars
            : words.say("week.of_piece", {{"piece", titles[piece]}, {"bars", bars}}));
  }
  if (!new_goals.empty() && every_bar) new_goals = {words.say("week.every_bar")};
  if (!new_goals.empty())
    return words.say("week.goal_learned", {{"weekday", weekday_long(words, week.last())},
                                           {"bars", list_text(words, new_goals)}});
  if (const int runs = runs_in(week); runs > 0) return words.count("week.goal_runs", runs);
  if (week.idle()) return words.say("week.goal_none");
  return week_stretch(words, plan, week.days);
}

}  // namespace cahier
