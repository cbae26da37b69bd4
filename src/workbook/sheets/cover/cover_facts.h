// The figures of the cover, and what the plan assumes.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"
#include "workbook/parts/totals.h"

namespace cahier {

struct CoverFact {
  std::string figure;
  std::string label;
};

// Six of them.
std::vector<CoverFact> cover_facts(const Plan& plan, const Words& words, const Totals& totals);

// One sentence each.
std::vector<std::string> cover_assumptions(const Plan& plan, const Words& words,
                                           const Totals& totals);

}  // namespace cahier
