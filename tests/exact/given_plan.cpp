#include "given_plan.h"

#include <algorithm>
#include <cmath>
#include <ostream>
#include <stdexcept>

#include "model_data.h"

namespace exact {
namespace {

bool is_pass(const std::string& drill) { return drill == "slow_pass" || drill == "counted_pass"; }

int minutes_of(const judge::Task& task, const CutWork& cut, const TaskMinutes& minutes) {
  int level = 1;
  for (const Passage& passage : cut.passages)
    if (passage.bars.last >= task.bars.first && passage.bars.first <= task.bars.last)
      level = std::max(level, cut.levels[passage.chunk]);
  if (task.drill == "learn") return minutes.learn(task.bars, level);
  if (task.drill == "join") return minutes.from_memory(task.bars, level, "join tempo");
  if (task.drill == "recall") return minutes.from_memory(task.bars, level, "recall tempo");
  if (task.drill == "slow_pass") return minutes.slow_pass(task.bars, level);
  if (task.drill == "counted_pass") return minutes.from_memory(task.bars, level, "counted tempo");
  if (task.drill == "cue_starts") return minutes.starts(task.steps.at(0).times);
  if (task.drill == "run_through") return task.steps.at(0).times * minutes.run_through();
  return -1;  // no rule asks for it
}

}  // namespace

std::string in_words(const SmallWork& work) {
  return work.instrument + ", " + std::to_string(work.bars) + " bars, " +
         std::to_string(work.days) + " days, " + std::to_string(practice_days(work).size()) +
         " of practice" + (work.sections.back().returns ? ", a return" : "") +
         (work.alikes.empty() ? "" : ", look-alikes") +
         (work.new_to_performing ? ", new to performing" : "");
}

std::vector<Bars> chunks_of(const judge::Plan& plan) {
  std::vector<Bars> chunks;
  for (const judge::Chunk& chunk : plan.pieces.at(0).chunks) chunks.push_back(chunk.bars);
  return chunks;
}

bool compare(const judge::Plan& plan, const SmallWork& work, const TaskMinutes& minutes, int halves,
             std::ostream& faults) {
  const CutWork as_planned = cut(work, chunks_of(plan));
  bool same = true;
  const auto differ = [&](const std::string& what, double said, double expected) {
    same = false;
    faults << what << ": the plan says " << said << ", the formula " << expected << "\n";
  };
  for (std::size_t chunk = 0; chunk < as_planned.chunks.size(); ++chunk)
    if (plan.pieces[0].chunks[chunk].level != as_planned.levels[chunk])
      differ("level of " + plan.pieces[0].chunks[chunk].id, plan.pieces[0].chunks[chunk].level,
             as_planned.levels[chunk]);
  if (static_cast<int>(plan.days.size()) != work.days)
    differ("days", static_cast<double>(plan.days.size()), work.days);
  for (int day = 0; day < work.days; ++day) {
    const judge::Day& planned = plan.days.at(static_cast<std::size_t>(day));
    const double allowance = work.room(day, halves) / 2.0;
    if (planned.allowance != allowance)
      differ("allowance on " + judge::iso(planned.date), planned.allowance, allowance);
    for (const judge::Task& task : planned.tasks) {
      const int expected = minutes_of(task, as_planned, minutes);
      if (expected >= 0 && task.minutes * 2 != expected)
        differ("minutes of task " + task.id + ", " + task.drill, task.minutes, expected / 2.0);
    }
  }
  return same;
}

GivenPlan::GivenPlan(const judge::Plan& plan, const SmallWork& work, const CutWork& cut)
    : work_(work), cut_(cut) {
  const std::vector<int> days = practice_days(work);
  learn_.assign(cut.chunks.size(), 0);
  runs_.assign(days.size(), 0);
  starts_ = runs_;
  recall_.assign(days.size(), std::vector<int>(cut.passages.size(), 0));
  join_ = recall_;
  for (std::size_t at = 0; at < days.size(); ++at)
    for (const judge::Task& task : plan.days.at(static_cast<std::size_t>(days[at])).tasks)
      take(task, static_cast<int>(at));
  if (std::count(learn_.begin(), learn_.end(), 0) > 0)
    throw std::runtime_error("the plan leaves a chunk out");
}

void GivenPlan::take(const judge::Task& task, int day) {
  if (task.drill == "learn") learn_.at(static_cast<std::size_t>(task.chunks.at(0))) = day + 1;
  if (task.drill == "run_through") runs_[day] += task.steps.at(0).times;
  if (task.drill == "cue_starts") starts_[day] += static_cast<int>(task.cues.size());
  const bool joins = task.drill == "join";
  if (!joins && task.drill != "recall" && !is_pass(task.drill)) return;
  std::size_t first = 0;
  while (first < cut_.passages.size() && cut_.passages[first].bars.first != task.bars.first)
    ++first;
  std::size_t last = first;
  while (last < cut_.passages.size() && cut_.passages[last].bars.last != task.bars.last) ++last;
  if (last >= cut_.passages.size())
    throw std::runtime_error("task " + task.id + " goes over parts of chunks");
  const int count = static_cast<int>(last - first) + 1;
  if (joins && count == 1) return;
  int& taken = (joins ? join_ : recall_)[day][first];
  taken = std::max(taken, count);
}

void GivenPlan::spoil(const std::string& how) {
  const int last_day = static_cast<int>(runs_.size());
  if (how == "minutes") {
    room_ = 1;
  } else if (how == "join" && cut_.joins > 0) {  // nothing is played across the first one
    for (auto* table : {&recall_, &join_})
      for (std::vector<int>& row : *table)
        for (std::size_t passage = 0; passage < row.size(); ++passage)
          if (passage == 0 || cut_.passages[passage].join == cut_.passages[0].join)
            row[passage] = std::min(row[passage], table == &join_ ? 0 : 1);
  } else if (how == "recalls") {  // only run-throughs, and starts for the forks
    for (std::vector<int>& row : recall_) std::fill(row.begin(), row.end(), 0);
    std::fill(starts_.begin(), starts_.end(), 2 * static_cast<int>(work_.alikes.size()));
  } else if (how == "night") {  // a chunk is new on the day of its first recall
    for (int day = 1; day < last_day; ++day)
      for (std::size_t passage = 0; passage < cut_.passages.size(); ++passage)
        if (recall_[day][passage] > 0) {
          learn_[static_cast<std::size_t>(cut_.passages[passage].chunk)] = day + 1;
          return;
        }
    throw std::runtime_error("nothing is recalled");
  } else if (how == "runs") {
    std::fill(runs_.begin(), runs_.end(), 0);
  } else if (how == "late") {  // a chunk is new on the last day
    learn_.back() = last_day;
  } else if (how == "twins" && !work_.alikes.empty()) {  // both new on one day
    const auto first_of = [&](const Bars& passage) {
      std::size_t chunk = 0;
      while (!cut_.chunks[chunk].holds(passage.first)) ++chunk;
      return chunk;
    };
    const Alike& alike = work_.alikes[0];
    learn_[first_of(alike.passages[1])] = learn_[first_of(alike.passages[0])];
  } else if (how == "fork" && !work_.alikes.empty()) {  // it is not drilled
    std::fill(starts_.begin(), starts_.end(), 0);
  } else {
    throw std::runtime_error("the plan cannot be spoilt so: " + how);
  }
}

void GivenPlan::write(std::ostream& out) const {
  out << "given = true;\n";
  write_list(out, "given_learn", learn_);
  write_list(out, "given_runs", runs_);
  write_list(out, "given_starts", starts_);
  write_table(out, "given_recall", 1, 1, recall_);
  write_table(out, "given_join", 1, 1, join_);
}

}  // namespace exact
