#include "plan/spoken_steps.h"

#include "practice/numbers.h"
#include "practice/time_model.h"

namespace cahier {

std::vector<Step> spoken_steps(const std::vector<std::string>& parts, const Method& method) {
  std::vector<Step> steps;
  for (const std::string& said : parts) {
    Step others{{}, {said}, method.spoken_times};
    for (const std::string& part : parts)
      if (part != said) others.parts.push_back(part);
    steps.push_back(std::move(others));
    if (parts.size() <= numbers::kMostPartsAlone)
      steps.push_back({{said}, {said}, method.spoken_own_times});
  }
  steps.push_back({parts, {}, method.spoken_together_times});
  return steps;
}

bool says_what_is_played(const Step& step) {
  return !step.spoken.empty() && step.parts == step.spoken;
}

}  // namespace cahier
