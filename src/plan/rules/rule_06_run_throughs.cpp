// Rule 6: nothing new at the end, and run-throughs enough, spread out, whole.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

struct Tally {
  int runs = 0;
  int on_days = 0;
  int last_day = -1;
  int runs_that_day = 0;
};

void check_enough(IndexedPlan& indexed, const IndexedPiece& piece, const Tally& tally) {
  const Plan& plan = indexed.plan;
  const bool missing_are_named =
      std::any_of(plan.unplaced.begin(), plan.unplaced.end(),
                  [&](const Unplaced& work) { return work.piece == piece.index; });
  if (missing_are_named) return;
  if (tally.runs < plan.runs_required())
    indexed.violation(6, Kind::too_few_runs,
                      fmt::format("\"{}\" has {} run-throughs instead of {}",
                                  piece.planned->piece.title, tally.runs, plan.runs_required()));
  if (tally.on_days < plan.method.run_days)
    indexed.violation(6, Kind::too_few_run_days,
                      fmt::format("the run-throughs of \"{}\" lie on {} days instead of {}",
                                  piece.planned->piece.title, tally.on_days, plan.method.run_days));
}

}  // namespace

void check_runs(IndexedPlan& indexed) {
  const Plan& plan = indexed.plan;
  const Date quiet_from = plan.by - days{plan.method.quiet_days};
  std::vector<Tally> tallies(indexed.pieces.size());
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::learn && indexed.days[moment.day]->date >= quiet_from)
      indexed.violation(6, Kind::new_at_the_end,
                        in_words(indexed, moment) + " is new in the last days");
    if (task.drill != Drill::run_through) return;
    const IndexedPiece& piece = indexed.pieces[task.piece];
    if (task.bars != piece.planned->piece.whole())
      indexed.violation(6, Kind::run_not_whole,
                        in_words(indexed, moment) + " is not the whole piece");
    // For a new date it is played through anew.
    if (plan.upkeep && indexed.is_past(moment)) return;
    Tally& tally = tallies[task.piece];
    if (tally.last_day != moment.day) {
      ++tally.on_days;
      tally.runs_that_day = 0;
      tally.last_day = moment.day;
    }
    const int runs = task.steps.empty() ? 0 : task.steps[0].times;
    tally.runs += runs;
    tally.runs_that_day += runs;
    if (!indexed.is_past(moment) && tally.runs_that_day > plan.method.runs_a_day)
      indexed.violation(
          6, Kind::too_many_runs_a_day,
          fmt::format("{} makes {} runs in a day; {} are allowed", in_words(indexed, moment),
                      tally.runs_that_day, plan.method.runs_a_day));
  });
  for (const IndexedPiece& piece : indexed.pieces)
    check_enough(indexed, piece, tallies[piece.index]);
}

}  // namespace cahier
