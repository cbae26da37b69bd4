// Indexes the pieces of a plan for the rules.
#pragma once

#include "plan/rules/indexed_plan.h"

namespace cahier {

// Adds the pieces to an indexed plan whose form is sound; also checks that sections and returns
// agree with the piece.
void index_pieces(IndexedPlan& indexed);

}  // namespace cahier
