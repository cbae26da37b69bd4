// Plans for tests: made by the real planner, and checked before they are handed out.
#pragma once

#include <string>
#include <vector>

#include "catch.h"
#include "piece/read_piece.h"
#include "plan/rules/rules.h"
#include "plan/search/planner.h"
#include "steady_method.h"

namespace cahier::sample {

inline Piece piece(const std::string& yaml) {
  Diagnostics diagnostics;
  std::optional<Piece> read = read_piece(Source("piece.yaml", yaml), diagnostics);
  for (const Diagnostic& diagnostic : diagnostics.all()) UNSCOPED_INFO(compose(diagnostic));
  REQUIRE(read.has_value());
  return *read;
}

inline Date date(const std::string& text) { return parse_date(text).value(); }

// What is wrong with a plan, in one text; empty for a sound one.
inline std::string faults_of(const Plan& plan) {
  std::string text;
  for (const Violation& violation : violations(plan))
    text += "rule " + std::to_string(violation.rule) + ": " + violation.what + "\n";
  return text;
}

// A plan for a piece given as YAML, with the wishes of its file.
inline Plan plan(const std::string& yaml, const std::string& from = "2027-01-04",
                 const std::string& by = "2027-03-20") {
  const std::vector<Piece> pieces = {piece(yaml)};
  Plan made = make_plan(pieces, settle(date(from), date(by), pieces.front().practice, steady()));
  REQUIRE(faults_of(made) == "");
  return made;
}

}  // namespace cahier::sample
