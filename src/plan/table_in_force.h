// Which workbook's dice table a player throws by.
#pragma once

#include "plan/plan.h"

namespace cahier {

// 0: no workbook's.
struct TableInForce {
  int stays = 0;  // the workbook whose table is that of the plan, so that it is not printed again
  int replaced = 0;  // the workbook whose table that of the plan takes the place of
};

// For a piece of a plan. A table that the log does not tell enough of counts as another one.
TableInForce table_in_force(const Plan& plan, int piece);

}  // namespace cahier
