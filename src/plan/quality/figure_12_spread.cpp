// Figure 12: learning is spread where there is slack.
//
// Choices, over all pieces together. Full pace is as much new each day as half of its minutes hold:
// there is slack where that ends before the first third of the practice days, and only then the
// figure holds. Learning goes on to between a third and a half of them; where full pace leaves
// eight weeks, no farther than leaves eight. The date needs a second chunk on a day as often as
// there are more chunks than days to learn them on. Alternating: no more practice days without
// anything new than twice the mean between days with something new. Days with something
// done count as practice days of the past, with the mean minutes of those to come.
#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

struct Practice {
  Date date;
  double minutes = 0;
};

std::vector<Practice> practice_days(const Plan& plan) {
  std::vector<Practice> found;
  for (const Day& day : plan.past)
    if (!day.tasks.empty()) found.push_back({day.date, 0});
  const std::size_t past = found.size();
  for (const Day& day : plan.days)
    if (day.allowance > 0) found.push_back({day.date, day.allowance});
  double mean = 0;
  for (const Practice& day : found) mean += day.minutes;
  if (found.size() > past) mean /= static_cast<double>(found.size() - past);
  for (std::size_t at = 0; at < past; ++at) found[at].minutes = mean;
  return found;
}

struct Learning {
  std::map<Date, int> chunks;  // new on a day
  int all = 0;
  double minutes = 0;
  bool planned = false;  // anything of it still to come
};

Learning learning_of(const PlacedPlan& placed) {
  Learning found;
  for (const PlacedPiece& piece : placed.pieces)
    for (std::size_t chunk = 0; chunk < piece.learned.size(); ++chunk) {
      const LearnedChunk& learned = *piece.learned[chunk];
      const Chunk& of = piece.planned->chunks[chunk];
      ++found.chunks[learned.date];
      ++found.all;
      found.minutes += piece.time.learn(of.bars, of.level);
      found.planned = found.planned || !learned.past;
    }
  return found;
}

// Practice days up to and including `date`.
int days_until(const std::vector<Practice>& practice, Date date) {
  return static_cast<int>(
      std::ranges::count_if(practice, [&](const Practice& day) { return day.date <= date; }));
}

int days_at_full_pace(const std::vector<Practice>& practice, double minutes) {
  int count = 0;
  for (; count < static_cast<int>(practice.size()) && minutes > 1e-9; ++count)
    minutes -= practice[count].minutes * numbers::kFullPaceShare;
  return minutes > 1e-9 ? static_cast<int>(practice.size()) + 1 : count;
}

void measure_second_chunks(FigureBuilder& figure, const Plan& plan, const Learning& learning,
                           int days_for_it) {
  std::vector<Date> dates;
  int seconds = 0;
  for (const auto& [date, chunks] : learning.chunks)
    if (chunks > 1 && date >= plan.from) {
      seconds += chunks - 1;
      dates.push_back(date);
    }
  const int needed = std::max(0, learning.all - days_for_it);
  if (!figure.at_most(std::max(0, seconds - needed), 0))
    figure.lacks({.lack = Lack::two_new, .dates = dates});
}

void measure_pauses(FigureBuilder& figure, const Plan& plan, const Learning& learning,
                    const std::vector<Practice>& practice, int span) {
  const int learning_days = static_cast<int>(learning.chunks.size());
  const int mean = (span + learning_days - 1) / learning_days;
  const int most = 2 * mean;
  for (auto day = learning.chunks.begin(); std::next(day) != learning.chunks.end(); ++day) {
    const Date next = std::next(day)->first;
    const int pause = days_until(practice, next) - days_until(practice, day->first) - 1;
    if (next >= plan.from && !figure.at_most(pause, most))
      figure.lacks({.lack = Lack::new_in_blocks,
                    .dates = {day->first, next},
                    .found = static_cast<double>(pause),
                    .wanted = static_cast<double>(most)});
  }
}

}  // namespace

Figure spread(const PlacedPlan& placed) {
  const Plan& plan = *placed.plan;
  const auto last = placed.last_new();
  if (!last || plan.upkeep || plan.by - *last < days{numbers::kDaysLeft}) return std::nullopt;
  const Learning learning = learning_of(placed);
  const std::vector<Practice> practice = practice_days(plan);
  const int full_pace = days_at_full_pace(practice, learning.minutes);
  const int all = static_cast<int>(practice.size());
  if (!learning.planned || full_pace > all) return std::nullopt;
  // A tenth of a day: what is nearly a whole one is one.
  const auto days_of = [&](double share) { return share * all; };
  const auto days_a_chunk = static_cast<int>(numbers::kMostDaysAChunk);
  int least = std::min(static_cast<int>(days_of(plan.method.least_learn_share) + 0.1),
                       days_a_chunk * (learning.all - 1) + 1);
  int most = static_cast<int>(std::ceil(days_of(plan.method.most_learn_share)));
  if (full_pace > 0 && plan.by - practice[full_pace - 1].date >= days{plan.method.prove_days}) {
    const int leaves_eight_weeks = days_until(practice, plan.by - days{plan.method.prove_days});
    if (leaves_eight_weeks < least) least = (full_pace + leaves_eight_weeks + 1) / 2;
    most = std::min(most, leaves_eight_weeks);
  }
  if (full_pace >= least) return std::nullopt;
  FigureBuilder figure(FigureKind::spread);
  const int span = days_until(practice, *last);
  const auto share = [&](int count) { return static_cast<double>(count) / all; };
  if (!figure.measure(share(span), {share(least), share(most)}))
    figure.lacks({.lack = span < least ? Lack::learned_early : Lack::learned_late,
                  .dates = {*last},
                  .found = 100 * share(span),
                  .wanted = 100 * share(span < least ? least : most)});
  measure_second_chunks(figure, plan, learning, most);
  measure_pauses(figure, plan, learning, practice, span);
  return figure.take();
}

}  // namespace cahier::figures
