// Figures 1, 2 and 3: when the run-throughs come.
#include <utility>

#include "plan/quality/each_figure.h"
#include "plan/quality/figure_builder.h"
#include "plan/quality/mend.h"
#include "plan/quality/missing.h"
#include "practice/numbers.h"

namespace cahier::figures {
namespace {

int days_between(Date first, Date second) { return static_cast<int>((second - first).count()); }

void measure_last_week(FigureBuilder& figure, const PlacedPiece& piece,
                       const std::vector<RunDay>& runs) {
  const Date by = piece.plan->by;
  int all = 0;
  int late = 0;
  std::vector<Date> dates;
  for (const RunDay& run : runs) {
    all += run.times;
    if (run.date < by - days{numbers::kLastWeek}) continue;
    late += run.times;
    dates.push_back(run.date);
  }
  if (all == 0 || figure.at_most(static_cast<double>(late) / all, 0.5)) return;
  figure.lacks(with_mend({.lack = Lack::runs_at_the_end,
                          .piece = piece.index,
                          .dates = dates,
                          .found = static_cast<double>(late),
                          .wanted = static_cast<double>(all / 2)},
                         *piece.plan,
                         {*piece.last_new + days{1}, by - days{numbers::kLastWeek + 1}},
                         piece.time.run_through()));
}

void measure_last_two_days(FigureBuilder& figure, const PlacedPiece& piece,
                           const std::vector<RunDay>& runs) {
  for (const RunDay& run : runs) {
    if (run.date < piece.plan->by - days{2}) continue;
    if (!figure.at_most(run.times, 1))
      figure.lacks({.lack = Lack::runs_on_one_day,
                    .piece = piece.index,
                    .dates = {run.date},
                    .found = static_cast<double>(run.times),
                    .wanted = 1});
  }
}

// The last day is light where at most half of its minutes is used; a single run-through and nothing
// else is light as well, however long the piece.
void measure_last_day(FigureBuilder& figure, const Plan& plan) {
  if (plan.days.empty()) return;
  const Day& last = plan.days.back();
  const bool one_run = last.tasks.size() == 1 && last.tasks[0].drill == Drill::run_through &&
                       !last.tasks[0].steps.empty() && last.tasks[0].steps[0].times == 1;
  const double used = last.allowance <= 0 || one_run ? 0 : last.minutes() / last.allowance;
  if (!figure.at_most(used, numbers::kLightShare))
    figure.lacks({.lack = Lack::last_day_full,
                  .dates = {last.date},
                  .found = last.minutes(),
                  .wanted = last.allowance * numbers::kLightShare});
}

}  // namespace

std::optional<DateSpan> first_run_window(const PlacedPiece& piece) {
  // A piece that is kept has no last new bars.
  if (!piece.leaves(numbers::kDaysLeft) || piece.plan->upkeep) return std::nullopt;
  // Where it is overdue already, it counts from the plan's first day.
  const bool overdue = *piece.last_new + days{piece.method().first_run_days} < piece.plan->from;
  const Date since = overdue ? piece.plan->from : *piece.last_new;
  return DateSpan{since, since + days{piece.method().first_run_days}};
}

Figure first_run_through(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::first_run_through);
  for (const PlacedPiece& piece : placed.pieces) {
    const auto window = first_run_window(piece);
    const std::vector<RunDay> runs = piece.runs();
    if (!window || (!runs.empty() && runs.front().past)) continue;
    const Date first = runs.empty() ? placed.plan->by : runs.front().date;
    const int late = days_between(window->first, first);
    if (figure.at_most(late, piece.method().first_run_days)) continue;
    Shortfall shortfall{.lack = Lack::first_run_late,
                        .piece = piece.index,
                        .dates = {first},
                        .found = static_cast<double>(late),
                        .wanted = static_cast<double>(piece.method().first_run_days)};
    if (runs.empty()) shortfall.lack = Lack::first_run_missing;
    figure.lacks(with_mend(std::move(shortfall), *placed.plan,
                           {window->first + days{1}, window->last}, piece.time.run_through()));
  }
  return figure.take();
}

Figure between_run_throughs(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::between_run_throughs);
  for (const PlacedPiece& piece : placed.pieces) {
    if (!piece.leaves(numbers::kDaysLeft)) continue;
    const std::vector<RunDay> runs = piece.runs();
    for (std::size_t at = 1; at < runs.size(); ++at) {
      const Date before = runs[at - 1].date;
      const int gap = days_between(before, runs[at].date);
      const int most = piece.method().days_between_runs(days_between(before, placed.plan->by));
      if (runs[at].past || figure.at_most(gap, most)) continue;
      figure.lacks(with_mend({.lack = Lack::runs_far_apart,
                              .piece = piece.index,
                              .dates = {before, runs[at].date},
                              .found = static_cast<double>(gap),
                              .wanted = static_cast<double>(most)},
                             *placed.plan, {before + days{1}, before + days{most}},
                             piece.time.run_through()));
    }
  }
  return figure.take();
}

Figure not_at_the_end(const PlacedPlan& placed) {
  FigureBuilder figure(FigureKind::not_at_the_end);
  bool any_week_left = false;
  for (const PlacedPiece& piece : placed.pieces) {
    const std::vector<RunDay> runs = piece.runs();
    if (piece.leaves(numbers::kDaysLeft)) measure_last_week(figure, piece, runs);
    if (!piece.leaves(numbers::kLastWeek)) continue;
    measure_last_two_days(figure, piece, runs);
    any_week_left = true;
  }
  if (any_week_left) measure_last_day(figure, *placed.plan);
  return figure.take();
}

}  // namespace cahier::figures
