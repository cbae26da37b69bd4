#include "plan/search/finish_plan.h"

#include <iterator>
#include <utility>

#include "plan/schedule/day_order.h"
#include "practice/dice_tables.h"

namespace cahier {

Plan finish_plan(const Terms& terms, const DividedWork& divided, Schedule schedule) {
  Plan plan;
  plan.from = terms.from;
  plan.by = terms.by;
  plan.method = terms.method;
  plan.temper = terms.temper;
  plan.order = terms.order;
  plan.new_to_performing = terms.new_to_performing;
  plan.blocks = terms.blocks;
  for (const Analysis& analysis : divided.analyses) {
    plan.pieces.push_back(analysis.planned);
    plan.pieces.back().dice = weighted_dice_tables(analysis.planned.thrown_cues(), terms.dice);
  }
  plan.record = terms.record;
  plan.past = divided.work.past;
  plan.upkeep = terms.upkeep;
  plan.days.assign(std::make_move_iterator(schedule.days.begin() + divided.work.first),
                   std::make_move_iterator(schedule.days.end()));
  number_tasks(plan.days);
  plan.unplaced = std::move(schedule.unplaced);
  plan.let_go = std::move(schedule.let_go);
  plan.fits = plan.unplaced.empty();
  return plan;
}

}  // namespace cahier
