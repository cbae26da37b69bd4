#include "workbook/parts/week_stretch.h"

#include <algorithm>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

#include "piece/short_title.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

constexpr std::size_t kMostStretches = 3;  // beyond that bars are counted, not named

// Kinds of work that can be a goal, the one that tells most of a memory first.
enum class Goal { passes, recalls, starts, temper, seams };
constexpr Goal kGoals[] = {Goal::passes, Goal::recalls, Goal::starts, Goal::temper, Goal::seams};

std::optional<Goal> goal_of(Drill drill) {
  if (drill == Drill::slow_pass || drill == Drill::counted_pass) return Goal::passes;
  if (drill == Drill::recall) return Goal::recalls;
  if (drill == Drill::cue_starts) return Goal::starts;
  if (facts_of(drill).stage == Stage::temper) return Goal::temper;
  if (drill == Drill::join) return Goal::seams;
  return std::nullopt;
}

// What a week asks for of one kind, of one piece.
struct WeekWork {
  Goal goal = Goal::seams;
  int piece = 0;
  std::size_t days = 0;  // on which it does
  std::vector<const Task*> tasks;
};

WeekWork work_of(std::span<const Day> week, Goal goal, int piece) {
  WeekWork work{goal, piece, 0, {}};
  for (const Day& day : week) {
    const std::size_t before = work.tasks.size();
    for (const Task& task : day.tasks)
      if (task.piece == piece && goal_of(task.drill) == goal) work.tasks.push_back(&task);
    if (work.tasks.size() > before) ++work.days;
  }
  return work;
}

// The kind of work with most days; the first of several.
WeekWork most_of(const Plan& plan, std::span<const Day> week) {
  WeekWork most;
  for (const Goal goal : kGoals)
    for (int piece = 0; piece < static_cast<int>(plan.pieces.size()); ++piece)
      if (WeekWork work = work_of(week, goal, piece); work.days > most.days) most = std::move(work);
  return most;
}

std::vector<BarRange> joined_bars(const std::vector<const Task*>& tasks) {
  std::vector<BarRange> all;
  for (const Task* task : tasks) all.push_back(task->bars);
  std::ranges::sort(all);
  std::vector<BarRange> joined;
  for (const BarRange& bars : all) {
    if (!joined.empty() && bars.first <= joined.back().last + 1)
      joined.back().last = std::max(joined.back().last, bars.last);
    else
      joined.push_back(bars);
  }
  return joined;
}

std::string one_stretch(const Words& words, const PlannedPiece& planned, BarRange bars) {
  if (bars == planned.piece.whole()) return words.say("week.whole_piece");
  for (const PlannedSection& section : planned.sections)
    if (section.bars == bars && section.name != bar_range(bars.first, bars.last))
      return words.say("week.section", {{"name", section.name}});
  return words.say("week.bars", {{"bars", bar_range(bars.first, bars.last)}});
}

std::string stretches(const Words& words, const PlannedPiece& planned,
                      const std::vector<BarRange>& all) {
  if (all.size() == 1) return one_stretch(words, planned, all.front());
  std::vector<std::string> texts;
  int bars = 0;
  for (const BarRange& one : all) {
    texts.push_back(bar_range(one.first, one.last));
    bars += one.size() - (one.first == 0 ? 1 : 0);  // an upbeat is no bar
  }
  if (all.size() > kMostStretches)
    return words.say("week.so_many_bars", {{"some", bars}, {"all", planned.piece.bars}});
  return words.say("week.bars", {{"bars", list_text(words, texts)}});
}

std::string_view manner(const WeekWork& work, const std::vector<BarRange>& bars) {
  const auto all_are = [&](Drill drill) {
    return std::ranges::all_of(work.tasks,
                               [drill](const Task* task) { return task->drill == drill; });
  };
  if (work.goal == Goal::passes)
    return all_are(Drill::slow_pass)      ? "week.goal_slowly"
           : all_are(Drill::counted_pass) ? "week.goal_counted"
                                          : "week.goal_passes";
  const bool in_one_go = bars.size() == 1 && std::ranges::any_of(work.tasks, [&](const Task* task) {
                           return task->bars == bars.front();
                         });
  return in_one_go ? "week.goal_whole" : "week.goal_recalled";
}

std::string said_of(const Words& words, const Plan& plan, int piece, std::string what) {
  if (plan.pieces.size() == 1) return what;
  std::vector<const Piece*> pieces;
  for (const PlannedPiece& planned : plan.pieces) pieces.push_back(&planned.piece);
  return words.say("week.of_piece", {{"bars", what}, {"piece", short_titles(pieces)[piece]}});
}

const Task* longest_silent(std::span<const Day> week) {
  const Task* found = nullptr;
  for (const Day& day : week)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::silent_run && (!found || task.bars.size() > found->bars.size()))
        found = &task;
  return found;
}

}  // namespace

std::string week_stretch(const Words& words, const Plan& plan, std::span<const Day> week) {
  const WeekWork work = most_of(plan, week);
  const auto say = [&](std::string_view key, int piece, const std::vector<BarRange>& bars) {
    const std::string what = stretches(words, plan.pieces[piece], bars);
    return words.say(key, {{"what", said_of(words, plan, piece, what)}});
  };
  if (work.days == 0 || work.goal == Goal::seams)
    if (const Task* silent = longest_silent(week))
      return say("week.goal_silent", silent->piece, {silent->bars});
  if (work.goal == Goal::starts) return words.say("week.goal_starts");
  if (work.goal == Goal::temper) return words.say("week.goal_weak");
  if (work.goal == Goal::seams) return words.say("week.goal_seams");
  const std::vector<BarRange> bars = joined_bars(work.tasks);
  return say(manner(work, bars), work.piece, bars);
}

}  // namespace cahier
