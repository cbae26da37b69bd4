// What a player could change so that work fits: each change in steps, from the least on.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "piece/piece.h"
#include "plan/terms.h"

namespace cahier {

// Over how many neighbouring dates fitting may come and go: a week, where its days differ.
int date_ripple(const Terms& terms);

// One thing to change. Steps run from 1 to `steps`; each further one asks more.
struct Lever {
  int steps = 0;
  // Fitting may come and go over so many neighbouring steps: dates fall on other weekdays, chunks
  // are cut at other places. 1 where a larger step surely fits when a smaller one does.
  int ripple = 1;
  std::function<void(Terms&, int step)> pull;
  std::function<std::string(int step)> words;  // to type
  // How much a step asks, as the share of what was planned that changes: half as many minutes
  // again, half as many days again, half the repetitions or chunks half as long again all ask 0.5.
  // Rises with the step.
  std::function<double(int step)> asks;
};

// Every lever that can be pulled from these terms: minutes, the date, the start, the repetitions,
// the chunks. No start before `earliest_start`, where there is one. A lever without effect is left
// out. Going without spoken parts and write-outs is none: they give way by themselves.
// REQUIRES: `terms` outlives the result.
std::vector<Lever> levers(const Terms& terms, std::optional<Date> earliest_start);

}  // namespace cahier
