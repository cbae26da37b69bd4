#include "score/notation/score_warnings.h"

#include <algorithm>

#include "score/xml/score_limits.h"

namespace cahier {

void ScoreWarnings::add(int element, std::string say) {
  if (all_.size() >= kMostScoreWarnings) return;
  const bool is_said = std::ranges::any_of(
      all_, [&](const ScoreWarning& one) { return one.element == element && one.say == say; });
  if (!is_said) all_.push_back({element, std::move(say)});
}

std::vector<ScoreWarning> ScoreWarnings::sorted() const {
  std::vector<ScoreWarning> sorted = all_;
  std::ranges::stable_sort(sorted, {}, &ScoreWarning::element);
  return sorted;
}

}  // namespace cahier
