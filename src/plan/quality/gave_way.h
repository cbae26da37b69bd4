// What a plan gives up for want of time, by kind.
#pragma once

#include <string_view>
#include <vector>

#include "plan/plan.h"
#include "plan/quality/quality_figure.h"

namespace cahier {

// "write_outs": in plan --json, and a key under "gave_way" in the catalogue.
std::string_view gave_way_word(GaveWay kind);

// What the plan let go, and what its figures find missing; in the order in which work gives way.
std::vector<GaveWay> what_gave_way(const Plan& plan, const std::vector<QualityFigure>& figures);

}  // namespace cahier
