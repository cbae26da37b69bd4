// Rule 11: where everything was learned before the plan begins and a day to practise is left, what
// the days cannot hold gives way, as far as the plan says so.
#include <algorithm>
#include <optional>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

// What a plan must have let go for the violation to be let pass; nothing for those of other rules.
std::optional<Why> let_pass_for(Kind kind) {
  switch (kind) {
    case Kind::join_not_played:
      return Why::no_room_to_join;
    case Kind::first_recall_late:
    case Kind::gap_too_long:
      return Why::no_room_to_recall;
    case Kind::too_few_runs:
    case Kind::too_few_run_days:
      return Why::no_room_to_run;
    case Kind::fork_not_drilled:
      return Why::no_room_to_prove;
    default:
      return std::nullopt;
  }
}

bool was_learned_before(const IndexedPlan& indexed) {
  return std::all_of(indexed.pieces.begin(), indexed.pieces.end(), [&](const IndexedPiece& piece) {
    return std::all_of(piece.learned.begin(), piece.learned.end(),
                       [&](const auto& learned) { return learned && indexed.is_past(*learned); });
  });
}

}  // namespace

void let_last_days_pass(IndexedPlan& indexed) {
  const Plan& plan = indexed.plan;
  const bool any_day = std::any_of(plan.days.begin(), plan.days.end(),
                                   [](const Day& day) { return day.allowance > 0; });
  if (!any_day || !was_learned_before(indexed)) return;
  std::erase_if(indexed.found, [&](const Violation& violation) {
    const auto why = let_pass_for(violation.kind);
    return why && std::any_of(plan.let_go.begin(), plan.let_go.end(),
                              [&](const Unplaced& work) { return work.why == *why; });
  });
}

}  // namespace cahier
