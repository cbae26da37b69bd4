#include "plan/rules/indexed_plan.h"

#include <fmt/format.h>

#include <algorithm>

namespace cahier {

std::vector<int> IndexedPiece::touched(const BarRange& bars) const {
  std::vector<int> chunks;
  for (int at = occurrence_at[bars.first]; at <= occurrence_at[bars.last]; ++at)
    if (occurrences[at].chunk >= 0) chunks.push_back(occurrences[at].chunk);
  std::sort(chunks.begin(), chunks.end());
  chunks.erase(std::unique(chunks.begin(), chunks.end()), chunks.end());
  return chunks;
}

const CueStart* IndexedPiece::find_cue(int number) const {
  const auto& cues = planned->cues;
  const auto found =
      std::lower_bound(cues.begin(), cues.end(), number,
                       [](const CueStart& cue, int wanted) { return cue.number < wanted; });
  return found != cues.end() && found->number == number ? &*found : nullptr;
}

bool is_retrieval(Drill drill) {
  return drill == Drill::recall || drill == Drill::cue_starts || drill == Drill::slow_pass ||
         drill == Drill::counted_pass || drill == Drill::run_through;
}

std::string in_words(const BarRange& bars) {
  return bars.size() == 1 ? fmt::format("bar {}", bars.first)
                          : fmt::format("bars {}-{}", bars.first, bars.last);
}

std::string in_words(const IndexedPlan& indexed, const Moment& moment) {
  const Task& task = indexed.task(moment);
  return fmt::format("{}, task {} ({}, {})", iso(indexed.days[moment.day]->date), task.id,
                     drill_word(task.drill), in_words(task.bars));
}

}  // namespace cahier
