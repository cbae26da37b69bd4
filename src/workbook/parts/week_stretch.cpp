#include "workbook/parts/week_stretch.h"

#include <string_view>

#include "piece/short_title.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

struct Goal {
  Drill drill;
  std::string_view key;
};

// The drills whose played stretches can be a goal, from the one that tells most of a memory on.
constexpr Goal kGoals[] = {{Drill::recall, "week.goal_whole"},
                           {Drill::counted_pass, "week.goal_counted"},
                           {Drill::slow_pass, "week.goal_slowly"}};

// The longest that one drill asks for; nullptr without any.
const Task* longest(std::span<const Day> week, Drill drill) {
  const Task* found = nullptr;
  for (const Day& day : week)
    for (const Task& task : day.tasks)
      if (task.drill == drill && (!found || task.bars.size() > found->bars.size())) found = &task;
  return found;
}

std::string stretch(const Words& words, const PlannedPiece& planned, BarRange bars) {
  if (bars == planned.piece.whole()) return words.say("week.whole_piece");
  for (const PlannedSection& section : planned.sections)
    if (section.bars == bars && section.name != bar_range(bars.first, bars.last))
      return words.say("week.section", {{"name", section.name}});
  return words.say("week.bars", {{"bars", bar_range(bars.first, bars.last)}});
}

std::string short_title_in(const Plan& plan, int piece) {
  std::vector<const Piece*> pieces;
  for (const PlannedPiece& planned : plan.pieces) pieces.push_back(&planned.piece);
  return short_titles(pieces)[piece];
}

std::string other_work(const Words& words, std::span<const Day> week) {
  bool starts = false;
  bool tempers = false;
  for (const Day& day : week)
    for (const Task& task : day.tasks) {
      starts = starts || task.drill == Drill::cue_starts;
      tempers = tempers || facts_of(task.drill).stage == Stage::temper;
    }
  return words.say(starts ? "week.goal_starts" : tempers ? "week.goal_weak" : "week.goal_seams");
}

}  // namespace

std::string week_stretch(const Words& words, const Plan& plan, std::span<const Day> week) {
  const Task* most = nullptr;
  std::string_view key;
  for (const Goal& goal : kGoals) {
    const Task* task = longest(week, goal.drill);
    if (!task || (most && task->bars.size() <= most->bars.size())) continue;
    most = task;
    key = goal.key;
  }
  if (!most && (most = longest(week, Drill::silent_run))) key = "week.goal_silent";
  if (!most) return other_work(words, week);
  const PlannedPiece& planned = plan.pieces[most->piece];
  std::string what = stretch(words, planned, most->bars);
  if (plan.pieces.size() > 1)
    what =
        words.say("week.of_piece", {{"bars", what}, {"piece", short_title_in(plan, most->piece)}});
  return words.say(key, {{"what", what}});
}

}  // namespace cahier
