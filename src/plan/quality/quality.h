// What a good teacher looks for in a plan, as figures: what makes one plan that keeps the rules
// better than another. Reads the plan alone.
//
// What is past is done: in a later edition it counts for every figure, and no figure falls short
// for the past alone. What was due before the plan's first day and is not done counts from that
// day on.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "plan/plan.h"
#include "plan/quality/quality_figure.h"

namespace cahier {

// In the order of the enumeration.
std::span<const FigureKind> every_figure();
// "first_run_through": in plan --json.
std::string_view figure_word(FigureKind kind);

// In the order of every_figure(); without those whose conditions do not hold.
std::vector<QualityFigure> quality(const Plan& plan);

}  // namespace cahier
