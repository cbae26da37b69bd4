#include "plan/due/cue_starts_due.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
CueStartsDue::CueStartsDue(const Analysis& analysis, const Terms& terms, ForksDue& forks)
    : analysis_(analysis), method_(terms.method), forks_(forks) {
  assigned_.assign(analysis.starts.size(), 0);
}

std::vector<Task> CueStartsDue::on_day(int position, const std::vector<int>& practice_days, int end,
                                       const RecallsDue& recalls, const TaskMaker& make,
                                       int set_aside, double room, bool begun, double fill) {
  std::vector<Task> tasks;
  if (room < analysis_.time.cue_starts(1)) return tasks;
  const int day = practice_days[position];
  const int days_left = static_cast<int>(practice_days.size()) - position;
  add_forks(day, end, days_left, recalls, make, room, tasks);
  if (tasks.empty())
    add_cue_starts(position, day, end, recalls, make, set_aside, begun, fill, room, tasks);
  return tasks;
}

void CueStartsDue::remember(const std::vector<int>& cues) {
  for (const int cue : cues) assigned_[cue - 1] = 1;
}

// One a day, since forks are for a fresh head, or two where not all would find a day.
void CueStartsDue::add_forks(int day, int end, int days_left, const RecallsDue& recalls,
                             const TaskMaker& make, double& room, std::vector<Task>& tasks) {
  std::vector<ForksDue::Place> due;
  for (auto fork = forks_.begin(); fork != forks_.end(); ++fork)
    if (is_due(*fork, day, end, recalls)) due.push_back(fork);
  // First what a rule asks for, then what has its day.
  std::stable_sort(due.begin(), due.end(), [](const auto& one, const auto& other) {
    const auto rank = [](const ForksDue::Waiting& fork) {
      return fork.drills > 0 ? 1 : fork.fork->required ? 0 : 2;
    };
    return rank(*one) < rank(*other);
  });
  int most = forks_.most_on(day, end, due.size(), days_left);
  for (const ForksDue::Place fork : due) {
    if (most == 0) return;
    Task task = ForksDue::task(*fork->fork, make);
    if (task.minutes > room) continue;
    room -= task.minutes;
    tasks.push_back(std::move(task));
    for (const int cue : fork->fork->cues) ++assigned_[cue - 1];
    forks_.drilled(fork, day);
    --most;
  }
}

bool CueStartsDue::has_fork_due(int day, int end, const RecallsDue& recalls) const {
  return std::any_of(forks_.begin(), forks_.end(), [&](const ForksDue::Waiting& fork) {
    return is_due(fork, day, end, recalls);
  });
}

bool CueStartsDue::is_due(const ForksDue::Waiting& fork, int day, int end,
                          const RecallsDue& recalls) const {
  if (!ForksDue::ready(*fork.fork, recalls, day)) return false;
  if (fork.drills > 0) return forks_.again(fork, day, end, recalls.last_learning_day());
  if (end - day <= numbers::kFirstForkBy) return true;
  const std::vector<int>& cues = fork.fork->cues;
  return std::all_of(cues.begin(), cues.end(), [&](int cue) {
    return recalls.ripe_enough(analysis_.starts[cue - 1].bars, day, numbers::kForkRipe);
  });
}

std::vector<int> CueStartsDue::cues_to_assign(int day, int count, const RecallsDue& recalls,
                                              int set_aside) const {
  std::vector<int> cues;
  const bool near = set_aside >= 0 && !recalls.far_enough(day, set_aside);
  for (const CueStart& cue : analysis_.planned.cues) {
    // Before a run-through only what slips.
    if (near && cue.weight == 1) continue;
    const double gaps =
        (assigned_[cue.number - 1] == 0 ? numbers::kNewStartRipe : numbers::kStartRipe) /
        cue.weight;
    if (recalls.ripe_enough(analysis_.starts[cue.number - 1].bars, day, gaps))
      cues.push_back(cue.number);
  }
  std::stable_sort(cues.begin(), cues.end(), [&](int a, int b) {
    const auto& starts = analysis_.planned.cues;
    // A start that leads into what slips has its turn as often as the dice would give it.
    const int turns_a = assigned_[a - 1] * starts[b - 1].weight;
    const int turns_b = assigned_[b - 1] * starts[a - 1].weight;
    if (turns_a != turns_b) return turns_a < turns_b;
    return recalls.ripeness(analysis_.starts[a - 1].touched.front(), day) >
           recalls.ripeness(analysis_.starts[b - 1].touched.front(), day);
  });
  if (static_cast<int>(cues.size()) > count) cues.resize(count);
  return cues;
}

// The chunks that these cue starts play of; all chunks where there are none.
std::vector<int> CueStartsDue::chunks_of(const std::vector<int>& cues) const {
  std::vector<int> chunks;
  for (const int cue : cues)
    for (const int chunk : analysis_.starts[cue - 1].touched) chunks.push_back(chunk);
  if (cues.empty())
    for (int chunk = 0; chunk < static_cast<int>(analysis_.planned.chunks.size()); ++chunk)
      chunks.push_back(chunk);
  return chunks;
}

void CueStartsDue::add_cue_starts(int position, int day, int end, const RecallsDue& recalls,
                                  const TaskMaker& make, int set_aside, bool begun, double fill,
                                  double& room, std::vector<Task>& tasks) {
  const bool whole = recalls.everything_learned() && recalls.last_learning_day() < day;
  // Once all is learned, a day that holds a recall anyway may as well hold a session.
  if (position - last_session_ < method_.sessions_apart &&
      !(whole && (begun || end - day <= method_.quiet_days)))
    return;
  std::vector<int> cues = cues_to_assign(
      day, whole ? method_.session_starts : numbers::kStartsWhileLearning, recalls, set_aside);
  const auto minutes = [&](std::size_t assigned, int throws) {
    return analysis_.time.cue_starts(static_cast<int>(assigned) + throws);
  };
  // No more starts than make the day a full one.
  while (cues.size() > 1 && whole &&
         minutes(cues.size() - 1, method_.cue_throws) >= std::min(fill, room))
    cues.pop_back();
  for (int throws = whole ? method_.cue_throws : 0; throws >= 0; --throws) {
    if (cues.empty() && throws == 0) return;
    if (minutes(cues.size(), throws) > room) continue;
    // A throw may bring any start.
    const double reached = recalls.tempo_reached(chunks_of(throws > 0 ? std::vector<int>{} : cues));
    Task task = make.cue_starts(cues, throws, reached);
    // Nobody sits down for a few throws alone, unless it was long ago.
    if (whole && !begun && task.minutes < fill &&
        position - last_session_ < numbers::kSessionsAtLeastEvery && end - day > method_.quiet_days)
      return;
    task.reason = Reason::every_start;
    for (const int cue : cues) ++assigned_[cue - 1];
    last_session_ = position;
    room -= task.minutes;
    tasks.push_back(std::move(task));
    return;
  }
}

}  // namespace cahier
