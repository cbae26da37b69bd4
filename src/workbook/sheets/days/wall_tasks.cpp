#include "workbook/sheets/days/wall_tasks.h"

#include <algorithm>
#include <utility>

#include "text/phrasing.h"
#include "workbook/parts/task_words.h"

namespace cahier {
namespace {

// A group while its tasks are gathered.
struct Gathered {
  Drill drill = Drill::learn;
  bool fork = false;
  int piece = 0;
  std::vector<BarRange> bars;
  std::vector<int> starts;  // bars to begin at
  int throws = 0;
  int times = 0;  // of the whole piece

  bool takes(const Task& task) const {
    return task.drill == drill && task.fork == fork && task.piece == piece;
  }
};

void add_bars(Gathered& group, BarRange bars) {
  const bool goes_on = group.drill == Drill::learn && !group.bars.empty() &&
                       group.bars.back().last + 1 == bars.first;
  if (goes_on)
    group.bars.back().last = bars.last;
  else if (std::find(group.bars.begin(), group.bars.end(), bars) == group.bars.end())
    group.bars.push_back(bars);
}

void add(Gathered& group, const PlannedPiece& piece, const Task& task) {
  if (covers(task.drill, Covers::piece)) group.times += times_of(task);
  if (!covers(task.drill, Covers::starts)) return add_bars(group, task.bars);
  group.throws += task.throws;
  for (const int cue : task.cues) {
    const int bar = piece.cues[cue - 1].bar;
    if (std::find(group.starts.begin(), group.starts.end(), bar) == group.starts.end())
      group.starts.push_back(bar);
  }
}

void unite(std::vector<BarRange>& bars) {
  std::sort(bars.begin(), bars.end(),
            [](const BarRange& a, const BarRange& b) { return a.first < b.first; });
  std::vector<BarRange> united;
  for (const BarRange& range : bars) {
    if (!united.empty() && range.first <= united.back().last + 1)
      united.back().last = std::max(united.back().last, range.last);
    else
      united.push_back(range);
  }
  bars = std::move(united);
}

// "new"; "slow passes": as many as there are starts, run-throughs or stretches.
std::string name_of(const Words& words, const Gathered& group) {
  const DrillFacts& facts = facts_of(group.drill);
  if (group.drill == Drill::learn) return words.say(facts.counted);
  if (facts.covers == Covers::starts)
    return words.count(group.fork ? "weeks.forks" : facts.counted,
                       static_cast<int>(group.starts.size()) + group.throws);
  return words.count(facts.counted, facts.covers == Covers::piece
                                        ? group.times
                                        : static_cast<int>(group.bars.size()));
}

std::vector<WallEntry> entries_of(const Words& words, const Gathered& group) {
  std::vector<WallEntry> entries;
  for (const int bar : group.starts) entries.push_back({std::to_string(bar), Behind::arrow});
  if (group.throws > 0)
    entries.push_back({words.say("weeks.times", {{"number", group.throws}}), Behind::die});
  for (const BarRange& bars : group.bars) {
    const std::string range = bar_range(bars.first, bars.last);
    const std::string times =
        group.times > 1 ? words.say("weeks.times", {{"number", group.times}}) + " " : "";
    entries.push_back({times + range, Behind::nothing});
  }
  return entries;
}

}  // namespace

std::vector<WallGroup> wall_groups(const Words& words, const Plan& plan, const Day& day,
                                   Together together) {
  std::vector<Gathered> gathered;
  for (const Task& task : day.tasks) {
    const auto searched =
        together == Together::all || gathered.empty() ? gathered.begin() : gathered.end() - 1;
    auto group = std::find_if(searched, gathered.end(),
                              [&](const Gathered& one) { return one.takes(task); });
    if (group == gathered.end())
      group = gathered.insert(gathered.end(), {task.drill, task.fork, task.piece, {}, {}, 0, 0});
    add(*group, plan.pieces[task.piece], task);
  }
  std::vector<WallGroup> groups;
  for (Gathered& group : gathered) {
    if (together == Together::all && !facts_of(group.drill).in_one_go) unite(group.bars);
    groups.push_back(
        {group.drill, group.fork, group.piece, entries_of(words, group), name_of(words, group)});
  }
  return groups;
}

}  // namespace cahier
