#include "score/ending_groups.h"

#include <algorithm>

namespace cahier {
namespace {

// Where an ending without an end stops: with the repeat sign, or before the next ending.
int end_of_open_ending(const std::vector<MeasureSigns>& signs, int first) {
  const int count = static_cast<int>(signs.size());
  for (int at = first; at < count; ++at) {
    if (signs[at].ending_stops || signs[at].backward) return at;
    if (at + 1 < count && signs[at + 1].ending_starts) return at;
  }
  return first;
}

void find_brackets(const std::vector<MeasureSigns>& signs, ScoreEndings& found,
                   ScoreWarnings& warnings) {
  const int count = static_cast<int>(signs.size());
  for (int at = 0; at < count; ++at) {
    if (!signs[at].ending_starts) continue;
    ScoreEnding ending;
    ending.first = at;
    ending.passes = *signs[at].ending_starts;
    ending.last = end_of_open_ending(signs, at);
    if (!signs[ending.last].ending_stops)
      warnings.add(at + 1,
                   "the end of this ending is not given; it is taken to end with the repeat "
                   "sign or before the next ending");
    ending.goes_back = signs[ending.last].backward;
    found.endings.push_back(std::move(ending));
    at = found.endings.back().last;
  }
}

int highest(const std::vector<int>& passes) { return *std::ranges::max_element(passes); }

bool continues(const ScoreEnding& before, const ScoreEnding& ending) {
  if (ending.first != before.last + 1) return false;
  return ending.passes.empty() || ending.passes.front() > before.passes.front();
}

void close_group(const std::vector<MeasureSigns>& signs, ScoreEndings& found,
                 ScoreWarnings& warnings) {
  EndingGroup& group = found.groups.back();
  int most = 0;
  int times = 0;
  for (int one = group.first_ending; one <= group.last_ending; ++one) {
    const ScoreEnding& ending = found.endings[one];
    most = std::max(most, highest(ending.passes));
    for (int at = ending.first; at <= ending.last; ++at)
      if (signs[at].backward) times = std::max(times, signs[at].times);
  }
  const ScoreEnding& last = found.endings[group.last_ending];
  const bool goes_back =
      std::any_of(found.endings.begin() + group.first_ending,
                  found.endings.begin() + group.last_ending + 1, [&](const ScoreEnding& ending) {
                    return ending.goes_back || signs[ending.last].jump.has_value();
                  });
  group.is_repeated = goes_back;
  if (!goes_back)
    warnings.add(found.endings[group.first_ending].first + 1,
                 "no repeat sign goes with these endings; they are played as they stand");
  if (last.goes_back && group.first_ending == group.last_ending)
    ++most;
  else if (last.goes_back && times <= most)
    warnings.add(last.last + 1,
                 "the last ending has a repeat sign, too; it is taken to be the end "
                 "of the repeat");
  group.passes = std::max({most, times, 2});
}

}  // namespace

bool ScoreEnding::is_for(int pass) const { return std::ranges::find(passes, pass) != passes.end(); }

const ScoreEnding* ScoreEndings::beginning_at(int element) const {
  const ScoreEnding* found = around(element);
  return found && found->first == element ? found : nullptr;
}

const ScoreEnding* ScoreEndings::around(int element) const {
  const auto after = std::ranges::upper_bound(endings, element, {}, &ScoreEnding::first);
  if (after == endings.begin()) return nullptr;
  const ScoreEnding& ending = *std::prev(after);
  return element <= ending.last ? &ending : nullptr;
}

int ScoreEndings::end_of_group(const ScoreEnding& ending) const {
  return endings[groups[ending.group].last_ending].last;
}

ScoreEndings find_endings(const std::vector<MeasureSigns>& signs, ScoreWarnings& warnings) {
  ScoreEndings found;
  find_brackets(signs, found, warnings);
  for (int one = 0; one < static_cast<int>(found.endings.size()); ++one) {
    ScoreEnding& ending = found.endings[one];
    const bool goes_on = one > 0 && continues(found.endings[one - 1], ending);
    if (!goes_on && one > 0) close_group(signs, found, warnings);
    if (!goes_on) found.groups.push_back({one, one, 2, true});
    if (ending.passes.empty())
      ending.passes = {goes_on ? highest(found.endings[one - 1].passes) + 1 : 1};
    found.groups.back().last_ending = one;
    ending.group = static_cast<int>(found.groups.size()) - 1;
  }
  if (!found.groups.empty()) close_group(signs, found, warnings);
  return found;
}

}  // namespace cahier
