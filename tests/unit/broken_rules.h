// Which rules a plan breaks, by number.
#pragma once

#include <algorithm>
#include <functional>
#include <string>
#include <vector>

#include "catch.h"
#include "plan/rules/rules.h"
#include "sound_plan.h"

namespace cahier {

// The rules broken, each once; the words go to the test's report.
inline std::vector<int> broken_rules(const Plan& plan) {
  std::vector<int> rules;
  for (const Violation& violation : violations(plan)) {
    UNSCOPED_INFO("rule " << violation.rule << ": " << violation.what);
    rules.push_back(violation.rule);
  }
  std::sort(rules.begin(), rules.end());
  rules.erase(std::unique(rules.begin(), rules.end()), rules.end());
  return rules;
}

// What is broken after one change to the sound plan.
inline std::vector<int> broken_by(const std::function<void(Plan&)>& change) {
  Plan plan = sound_plan();
  change(plan);
  return broken_rules(plan);
}

// Leaves spoken and written work out, so that rule 9 asks for no pass.
inline void without_temper(Plan& plan) {
  plan.temper = Temper::no;
  for (Day& day : plan.days)
    std::erase_if(day.tasks,
                  [](const Task& task) { return stage_of(task.drill) == Stage::temper; });
}

using Rules = std::vector<int>;
using Kind = Violation::Kind;

inline bool finds(const Plan& plan, Kind kind) {
  const auto found = violations(plan);
  return std::any_of(found.begin(), found.end(),
                     [&](const Violation& violation) { return violation.kind == kind; });
}

// The same after one change to the sound plan.
inline bool finds(const std::function<void(Plan&)>& change, Kind kind) {
  Plan plan = sound_plan();
  change(plan);
  return finds(plan, kind);
}

}  // namespace cahier
