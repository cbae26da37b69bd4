#include "plan/due/joins_due.h"

#include <algorithm>

namespace cahier {

JoinsDue::JoinsDue(const Analysis& analysis, const Method& method)
    : analysis_(analysis), method_(method) {}

void JoinsDue::learned(int chunk, int day, const RecallsDue& recalls) {
  for (const int index : analysis_.joins_of[chunk]) {
    const Join& join = analysis_.joins[index];
    if (recalls.learned(join.left_chunk) && recalls.learned(join.right_chunk))
      open_.emplace(join.left, day);
  }
}

void JoinsDue::played(const Task& task) {
  const auto& passages = analysis_.passages;
  int first = analysis_.passage_at(task.bars.first);
  if (first < 0 || passages[first].bars.first < task.bars.first) ++first;
  const auto from = open_.lower_bound(first);
  auto past = from;
  while (past != open_.end() && passages[past->first + 1].bars.last <= task.bars.last) ++past;
  open_.erase(from, past);
}

bool JoinsDue::waits(int chunk, int next) const {
  const auto& joins = analysis_.joins_of[chunk];
  return std::any_of(joins.begin(), joins.end(), [&](int index) {
    const Join& join = analysis_.joins[index];
    return join.left_chunk == chunk && join.right_chunk == next &&
           !analysis_.passages[join.left].in_return &&
           !analysis_.passages[join.left + 1].in_return && open_.contains(join.left);
  });
}

std::vector<Task> JoinsDue::take(const RecallsDue& recalls, const TaskMaker& make, double room,
                                 const Taking& taking) {
  std::vector<Task> tasks;
  std::vector<int> waiting;
  for (const auto& [left, day] : open_)
    if (day <= taking.since) waiting.push_back(left);
  const auto& passages = analysis_.passages;
  int taken = 0;  // passages before this one are in a task already
  for (auto next = waiting.begin(); next != waiting.end();) {
    const int first = *next++;
    int last = first + 1;
    while (next != waiting.end() && *next == last && short_enough(first, last + 1))
      last = *next++ + 1;
    int from = first;
    while (taking.lead_in && from > taken &&
           passages[from - 1].section == passages[first].section &&
           recalls.learned(passages[from - 1].chunk) && short_enough(from - 1, last))
      --from;
    for (; from <= first; ++from) {
      Task task = make.join(bars(from, last));
      if (task.minutes > room || (taking.accept && !taking.accept(task))) continue;
      task.reason = passages[first].in_return || passages[last].in_return ? Reason::joins_return
                                                                          : Reason::joins_new;
      room -= task.minutes;
      played(task);
      tasks.push_back(std::move(task));
      taken = last;
      break;
    }
  }
  return tasks;
}

std::vector<BarRange> JoinsDue::left_over() const {
  std::vector<BarRange> result;
  for (const auto& [left, day] : open_) result.push_back(bars(left, left + 1));
  return result;
}

BarRange JoinsDue::bars(int first, int last) const {
  return {analysis_.passages[first].bars.first, analysis_.passages[last].bars.last};
}

bool JoinsDue::short_enough(int first, int last) const {
  return bars(first, last).size() <= method_.stretch_bars;
}

}  // namespace cahier
