// What each task asks for: parts, times and tempo.
#include <algorithm>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

using Names = std::vector<std::string>;

bool are_parts(const Names& names, const Names& parts) {
  return std::all_of(names.begin(), names.end(), [&](const std::string& name) {
    return std::count(names.begin(), names.end(), name) == 1 &&
           std::find(parts.begin(), parts.end(), name) != parts.end();
  });
}

bool share_a_name(const Names& some, const Names& others) {
  return std::find_first_of(some.begin(), some.end(), others.begin(), others.end()) != some.end();
}

bool plays_everything(const Step& step, const Names& parts) {
  return step.parts.size() == parts.size() && step.spoken.empty();
}

// Each part is said while all the others are played, and, with two or three parts, then by itself;
// at last all are played together.
bool is_spoken_each_way_round(const Task& task, const Names& parts) {
  const auto has = [&](const std::string& said, std::size_t played, bool said_is_played) {
    return std::any_of(task.steps.begin(), task.steps.end(), [&](const Step& step) {
      return step.spoken == Names{said} && step.parts.size() == played &&
             share_a_name(step.parts, step.spoken) == said_is_played;
    });
  };
  const bool alone = parts.size() == 2 || parts.size() == 3;
  return plays_everything(task.steps.back(), parts) &&
         std::all_of(parts.begin(), parts.end(), [&](const std::string& part) {
           return has(part, parts.size() - 1, false) && (!alone || has(part, 1, true));
         });
}

// Of bars that a way leads to, and no others.
bool leads_to_its_tempi(const Task& task) {
  return std::ranges::all_of(task.tempi_after_jumps, [&](const TempoFrom& from) {
    return !task.bars.contains(from.bar) && from.per_minute > 0 &&
           std::ranges::find(task.ways, from.bar, &PlayedWay::to) != task.ways.end();
  });
}

// Two or more, by bar, the first that of the task.
bool names_its_tempi(const Task& task) {
  if (!leads_to_its_tempi(task)) return false;
  if (task.tempi.empty()) return true;
  if (task.tempi.size() < 2 || task.tempo != task.tempi.front().per_minute) return false;
  for (std::size_t at = 0; at < task.tempi.size(); ++at) {
    const TempoFrom& from = task.tempi[at];
    if (!task.bars.contains(from.bar) || !(from.per_minute > 0)) return false;
    if (at > 0 && from.bar <= task.tempi[at - 1].bar) return false;
  }
  return true;
}

int rule_of(Drill drill) {
  switch (drill) {
    case Drill::learn:
      return 2;
    case Drill::join:
      return 4;
    case Drill::run_through:
      return 6;
    case Drill::cue_starts:
      return 7;
    case Drill::spoken_part:
    case Drill::write_out:
      return 9;
    case Drill::silent_run:
      return 0;
    case Drill::recall:
    case Drill::slow_pass:
    case Drill::counted_pass:
      return 5;
  }
  return 0;
}

std::string fault_of(const Task& task, const Names& parts) {
  const bool speaks = task.drill == Drill::spoken_part;
  const bool writes = task.drill == Drill::write_out;
  const bool silent = writes || task.drill == Drill::silent_run;
  if (task.tempo.has_value() == silent)
    return silent ? " has a tempo though nothing is played" : " has no tempo";
  if (task.tempo && !(*task.tempo > 0)) return " has no tempo above nothing";
  if (!names_its_tempi(task)) return " names its tempi out of order, or outside its bars";
  if (task.steps.empty() && !writes) return " has no step";
  for (const Step& step : task.steps) {
    if (step.times < 1) return " has a step that is done no times";
    if (!are_parts(step.parts, parts) || !are_parts(step.spoken, parts))
      return " names parts that the piece has not";
    if (step.parts.empty() && !writes) return " has a step in which nothing is played";
    if (!step.spoken.empty() && !speaks) return " has a step that is spoken";
    if (step.spoken.size() > 1) return " has a step in which several parts are spoken";
    if (share_a_name(step.parts, step.spoken) && step.parts.size() > 1)
      return " speaks a part that is played with others";
  }
  if (speaks && parts.size() > 1 && !is_spoken_each_way_round(task, parts))
    return " does not speak each part as it should, and play all at last";
  const bool in_one = task.drill == Drill::run_through || task.drill == Drill::silent_run;
  if (in_one && task.steps.size() != 1) return " is not one step";
  const bool needs_everything = !speaks && !writes;
  if (needs_everything && !std::any_of(task.steps.begin(), task.steps.end(), [&](const Step& step) {
        return plays_everything(step, parts);
      }))
    return " never plays all parts together";
  return {};
}

}  // namespace

void check_steps(IndexedPlan& indexed) {
  indexed.each_planned([&](const Moment& moment, const Task& task) {
    const std::string fault = fault_of(task, indexed.plan.pieces[task.piece].piece.parts());
    if (!fault.empty())
      indexed.violation(rule_of(task.drill), Kind::steps, in_words(indexed, moment) + fault);
  });
}

}  // namespace cahier
