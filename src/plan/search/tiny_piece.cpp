#include "plan/search/tiny_piece.h"

#include <algorithm>

#include "plan/due/forks_due.h"
#include "plan/due/piece_progress.h"
#include "plan/due/task_maker.h"
#include "practice/best_gap.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

Mask mask_of(const std::vector<int>& indices) {
  Mask mask = 0;
  for (const int index : indices) mask |= only(index);
  return mask;
}

// The calendar, and until when what was played must come back; as RecallsDue reckons it.
void add_days(const Work& work, TinyPiece& tiny) {
  const Method& method = work.terms.method;
  const int end = static_cast<int>(work.days.size());
  std::vector<int> days;
  for (int day = 0; day < end; ++day) {
    if (work.days[day].allowance <= 0) continue;
    days.push_back(day);
    tiny.room.push_back(work.days[day].allowance);
    tiny.may_learn.push_back(end - day > method.quiet_days);
  }
  const int never = tiny.positions();
  for (int at = 0; at < never; ++at) {
    const int next = at + 1 < never ? days[at + 1] : end;
    const int latest = std::max(next, days[at] + longest_gap_days(method, end - days[at]));
    const auto past = std::upper_bound(days.begin(), days.end(), latest);
    tiny.again_by.push_back(latest >= end ? never : static_cast<int>(past - days.begin()) - 1);
    const int by_rule = std::min(never, at + method.first_recall_days);
    tiny.first_by.push_back(std::min(by_rule, tiny.again_by.back()));
  }
}

void add_music(const Analysis& analysis, const TaskMaker& make, TinyPiece& tiny) {
  tiny.learning = analysis.learn_minutes;
  for (const auto& rivals : analysis.rivals) tiny.rivals.push_back(mask_of(rivals));
  tiny.place_of.assign(tiny.learning.size(), 0);
  const int passages = static_cast<int>(analysis.passages.size());
  for (int at = 0; at < passages; ++at) {
    const Passage& passage = analysis.passages[at];
    tiny.chunk_at.push_back(passage.chunk);
    if (passage.learned == analysis.planned.chunks[passage.chunk].bars) tiny.whole |= only(at);
    if (!passage.in_return) tiny.place_of[passage.chunk] = at;
  }
  tiny.recall.assign(analysis.passages.size(), std::vector<double>(analysis.passages.size()));
  tiny.join = tiny.recall;
  for (int first = 0; first < passages; ++first)
    for (int last = first; last < passages; ++last) {
      const BarRange bars = tiny.bars(analysis, first, last);
      tiny.recall[first][last] = make.minutes(Drill::recall, bars);
      tiny.join[first][last] = make.minutes(Drill::join, bars);
    }
  for (const Join& join : analysis.joins)
    tiny.joins.push_back({join.left, only(join.left_chunk) | only(join.right_chunk)});
  for (const ForkDrill& fork : analysis.fork_drills) {
    if (!fork.required) continue;
    const Task task = ForksDue::task(fork, make);
    tiny.forks.push_back({mask_of(fork.learned), mask_of(task.chunks), task.minutes});
  }
}

}  // namespace

std::optional<TinyPiece> tiny_piece(const Work& work) {
  if (work.analyses.size() != 1 || !work.past.empty()) return std::nullopt;
  const Analysis& analysis = work.analyses.front();
  if (work.order.size() > numbers::kTinyWork || analysis.passages.size() > kMostInMask)
    return std::nullopt;
  TinyPiece tiny;
  add_days(work, tiny);
  add_music(analysis, TaskMaker(analysis, work.terms.method, 0), tiny);
  tiny.run_through = analysis.time.run_through();
  tiny.runs = std::max(work.terms.runs_required(), work.terms.method.run_days);
  tiny.run_days = work.terms.method.run_days;
  tiny.runs_a_day = work.terms.method.runs_a_day;
  const bool alone = std::all_of(tiny.room.begin(), tiny.room.end(),
                                 [&](double room) { return room < tiny.run_through; });
  if (alone) return std::nullopt;
  return tiny;
}

}  // namespace cahier
