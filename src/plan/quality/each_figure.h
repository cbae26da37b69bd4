// The figures, one function each; nothing where its conditions hold for no piece.
#pragma once

#include <optional>

#include "plan/quality/placed_tasks.h"
#include "plan/quality/quality_figure.h"

namespace cahier::figures {

// From the last new bars to the date, in days: with fewer most figures ask nothing.

using Figure = std::optional<QualityFigure>;

Figure first_run_through(const PlacedPlan& placed);
Figure between_run_throughs(const PlacedPlan& placed);
Figure not_at_the_end(const PlacedPlan& placed);
Figure growing_stretches(const PlacedPlan& placed);
Figure seams(const PlacedPlan& placed);
Figure passes(const PlacedPlan& placed);
Figure forks(const PlacedPlan& placed);
Figure spoken_and_written(const PlacedPlan& placed);
Figure phrases(const PlacedPlan& placed);
Figure use_of_time(const PlacedPlan& placed);
Figure spread(const PlacedPlan& placed);
Figure criterion(const PlacedPlan& placed);
Figure hard_bars(const PlacedPlan& placed);
Figure tempo(const PlacedPlan& placed);
Figure order(const PlacedPlan& placed);
Figure spacing(const PlacedPlan& placed);

}  // namespace cahier::figures
