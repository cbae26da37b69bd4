#include "report/gave_way_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "plan/quality/gave_way.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

bool holds(const Plan& plan, Drill drill) {
  return std::any_of(plan.days.begin(), plan.days.end(), [&](const Day& day) {
    return std::any_of(day.tasks.begin(), day.tasks.end(),
                       [&](const Task& task) { return task.drill == drill; });
  });
}

std::string phrase(const Plan& plan, const Words& words, GaveWay kind) {
  const bool some = (kind == GaveWay::write_outs && holds(plan, Drill::write_out)) ||
                    (kind == GaveWay::spoken_parts && holds(plan, Drill::spoken_part));
  return words.say(fmt::format("gave_way.{}{}", some ? "fewer_" : "", gave_way_word(kind)));
}

}  // namespace

std::string gave_way_text(const Plan& plan, const Words& words) {
  if (plan.gave_way.empty()) return {};
  std::vector<std::string> phrases;
  for (const GaveWay kind : plan.gave_way) phrases.push_back(phrase(plan, words, kind));
  return words.say("gave_way.sentence", {{"list", list_text(words, phrases)}});
}

}  // namespace cahier
