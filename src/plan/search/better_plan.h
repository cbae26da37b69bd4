// Which of two plans that keep the rules a good teacher would give.
#pragma once

#include <vector>

#include "plan/quality/quality_figure.h"

namespace cahier {

// Whether a plan with the figures `one` is to be preferred to one with the figures `other`: where
// more of them are met; of as many, where the first that only one of them meets is met, in this
// order: run-throughs, seams, sections, forks, passes, recalls, tempo, phrases, the calendar,
// spoken and written work.
bool is_better(const std::vector<QualityFigure>& one, const std::vector<QualityFigure>& other);

}  // namespace cahier
