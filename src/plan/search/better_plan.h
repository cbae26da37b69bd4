// Which of two plans that keep the rules a good teacher would give.
#pragma once

#include <vector>

#include "plan/quality/quality_figure.h"

namespace cahier {

// Whether a plan with the figures `one` is to be preferred to one with the figures `other`: the
// first that only one of them meets decides, in this order: run-throughs, learning spread, seams,
// sections, forks, passes, recalls, tempo, phrases, spoken and written work. How the days are used
// decides nothing: else a slow week would turn a calm plan into another one.
bool is_better(const std::vector<QualityFigure>& one, const std::vector<QualityFigure>& other);

}  // namespace cahier
