// Rule 6: nothing new at the end, and run-throughs enough, spread out, whole.
#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <vector>

#include "plan/rules/indexed_plan.h"

namespace cahier {
namespace {

struct Tally {
  int runs = 0;
  int on_days = 0;
  int last_day = -1;
  int runs_that_day = 0;
};

void check_enough(Judgement& judgement, const JudgedPiece& judged, const Tally& tally) {
  const Plan& plan = judgement.plan;
  const bool missing_are_named =
      std::any_of(plan.unplaced.begin(), plan.unplaced.end(),
                  [&](const Unplaced& work) { return work.piece == judged.index; });
  if (missing_are_named) return;
  if (tally.runs < plan.runs_required())
    judgement.breach(6, fmt::format("\"{}\" has {} run-throughs instead of {}",
                                    judged.planned->piece.title, tally.runs, plan.runs_required()));
  if (tally.on_days < plan.method.run_days)
    judgement.breach(6,
                     fmt::format("the run-throughs of \"{}\" lie on {} days instead of {}",
                                 judged.planned->piece.title, tally.on_days, plan.method.run_days));
}

}  // namespace

void check_runs(Judgement& judgement) {
  const Plan& plan = judgement.plan;
  const Date quiet_from = plan.by - days{plan.method.quiet_days};
  std::vector<Tally> tallies(judgement.pieces.size());
  judgement.each_task([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::learn && judgement.days[moment.day]->date >= quiet_from)
      judgement.breach(6, in_words(judgement, moment) + " is new in the last days");
    if (task.drill != Drill::run_through) return;
    const JudgedPiece& judged = judgement.pieces[task.piece];
    if (task.bars != judged.planned->piece.whole())
      judgement.breach(6, in_words(judgement, moment) + " is not the whole piece");
    // For a new date it is played through anew.
    if (plan.upkeep && judgement.is_past(moment)) return;
    Tally& tally = tallies[task.piece];
    if (tally.last_day != moment.day) {
      ++tally.on_days;
      tally.runs_that_day = 0;
      tally.last_day = moment.day;
    }
    const int runs = task.steps.empty() ? 0 : task.steps[0].times;
    tally.runs += runs;
    tally.runs_that_day += runs;
    if (!judgement.is_past(moment) && tally.runs_that_day > plan.method.runs_a_day)
      judgement.breach(
          6, fmt::format("{} makes {} runs in a day; {} are allowed", in_words(judgement, moment),
                         tally.runs_that_day, plan.method.runs_a_day));
  });
  for (const JudgedPiece& judged : judgement.pieces)
    check_enough(judgement, judged, tallies[judged.index]);
}

}  // namespace cahier
