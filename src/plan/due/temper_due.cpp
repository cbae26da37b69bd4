#include "plan/due/temper_due.h"

#include <algorithm>

#include "plan/chunks/divide.h"
#include "practice/numbers.h"

namespace cahier {
TemperDue::TemperDue(const Analysis& analysis, const Terms& terms)
    : quiet_days_(terms.method.quiet_days), temper_quiet_days_(terms.method.temper_quiet_days) {
  if (terms.temper == Temper::no) return;
  const auto& chunks = analysis.planned.chunks;
  std::vector<int> weakest_first;
  for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk)
    if (terms.temper == Temper::yes || chunks[chunk].level >= terms.method.weak_level)
      weakest_first.push_back(chunk);
  std::stable_sort(weakest_first.begin(), weakest_first.end(),
                   [&](int a, int b) { return chunks[a].level > chunks[b].level; });
  const auto wait = [&](int chunk, Drill drill) {
    const Chunk& of = chunks[chunk];
    const double minutes = analysis.time.minutes(drill, of.bars, of.level);
    const bool required = terms.temper == Temper::yes ||
                          analysis.planned.piece.hardest_level(of.bars) >= terms.method.weak_level;
    waiting_.push_back({chunk, drill, of.level, minutes, required});
  };
  // Who plays with two hands can play with one and speak the other.
  const Instrument& instrument = analysis.planned.piece.instrument;
  if (instrument.parts.size() < 2 || !instrument.has_hands) {
    for (const int chunk : weakest_first) wait(chunk, Drill::write_out);
    return;
  }
  // A chunk is written out after the next one is spoken, so that two turns on the same bars do not
  // follow each other.
  for (std::size_t i = 0; i < weakest_first.size(); ++i) {
    wait(weakest_first[i], Drill::spoken_part);
    if (i > 0) wait(weakest_first[i - 1], Drill::write_out);
  }
  if (!weakest_first.empty()) wait(weakest_first.back(), Drill::write_out);
}

void TemperDue::strike(int chunk, Drill drill) {
  waiting_.remove_if([&](const Item& item) { return item.chunk == chunk && item.drill == drill; });
}

void TemperDue::relax(int chunk, Drill drill) {
  for (Item& item : waiting_)
    if (item.chunk == chunk && item.drill == drill) item.required = false;
}

bool TemperDue::is_ready(const Item& item, const RecallsDue& recalls, int day) {
  return recalls.learned_before(item.chunk, day) && recalls.passed_before(item.chunk, day);
}

TemperDue::Place TemperDue::next(const RecallsDue& recalls, int day) const {
  // What is in a pass only today waits for another day, and what is less weak with it.
  const auto passed = std::find_if(waiting_.begin(), waiting_.end(), [&](const Item& item) {
    return is_ready(item, recalls, day + 1);
  });
  return passed != waiting_.end() && is_ready(*passed, recalls, day) ? passed : waiting_.end();
}

std::vector<Task> TemperDue::take(int position, const std::vector<int>& practice_days, int end,
                                  const RecallsDue& recalls, const TaskMaker& make,
                                  TemperRoom of_day) {
  std::vector<Task> tasks;
  const int day = practice_days[position];
  if (!recalls.everything_learned() || recalls.last_learning_day() >= day) return tasks;
  const bool spared = end - recalls.last_learning_day() >= numbers::kDaysLeft;
  const int last = end - 1 - (spared ? std::max(temper_quiet_days_, quiet_days_) : quiet_days_);
  if (day > last) return tasks;
  const auto days_left = std::count_if(practice_days.begin() + position, practice_days.end(),
                                       [&](int practice) { return practice <= last; });
  double ready = 0;
  for (const Item& item : waiting_)
    if (is_ready(item, recalls, day)) ready += item.minutes;
  if (!of_day.begun && ready < of_day.fill) return tasks;
  // About every other day has other work.
  const auto share = numbers::kDaysForOneTemper * static_cast<double>(waiting_.size()) /
                     static_cast<double>(days_left);
  double minutes = 0;
  while (of_day.begun ? static_cast<double>(tasks.size()) < share : minutes < of_day.fill) {
    const auto next = this->next(recalls, day);
    if (next == waiting_.end() || minutes + next->minutes > of_day.room) break;
    minutes += next->minutes;
    tasks.push_back(task(*next, make));
    strike(next);
  }
  return tasks;
}

Task TemperDue::task(const Item& item, const TaskMaker& make) {
  Task task = make.of_chunk(item.drill, item.chunk);
  task.reason = Reason::weakest_first;
  return task;
}

std::vector<Task> TemperDue::left_over(const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (const Item& item : waiting_)
    if (item.required) tasks.push_back(task(item, make));
  return tasks;
}

}  // namespace cahier
