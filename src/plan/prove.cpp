#include "plan/prove.h"

#include <algorithm>

namespace cahier {
namespace {

constexpr int kSessionsApart = 3;     // practice days, while the piece is not whole
constexpr int kWholeApart = 2;        // practice days, once it is
constexpr int kLastWeeks = 28;        // days before the date with cue starts on every practice day
constexpr int kForkAtTheLatest = 12;  // days before the date

}  // namespace

Proof::Proof(const Anatomy& anatomy, const Terms& terms)
    : anatomy_(anatomy), method_(terms.method) {
  fork_done_.assign(anatomy.forks.size(), false);
  assigned_.assign(anatomy.starts.size(), 0);
  if (terms.temper == Temper::no) return;
  const auto& chunks = anatomy.planned.chunks;
  std::vector<int> targets;
  for (int chunk = 0; chunk < static_cast<int>(chunks.size()); ++chunk)
    if (terms.temper == Temper::yes || chunks[chunk].level >= method_.weak_level)
      targets.push_back(chunk);
  std::stable_sort(targets.begin(), targets.end(),
                   [&](int a, int b) { return chunks[a].level > chunks[b].level; });
  for (const int chunk : targets) {
    if (anatomy.planned.piece.parts().size() > 1) temper_.push_back({chunk, Drill::spoken_part});
    temper_.push_back({chunk, Drill::write_out});
  }
}

std::vector<Task> Proof::on_day(int position, const std::vector<int>& practice_days, int end,
                                const Memory& memory, const TaskMaker& make, int next_run,
                                bool temper, double room, bool begun) {
  std::vector<Task> tasks;
  const int day = practice_days[position];
  add_forks(day, end, memory, make, room, tasks);
  if (tasks.empty()) add_cue_starts(position, day, end, memory, make, next_run, begun, room, tasks);
  if (temper) add_temper(position, practice_days, end, memory, make, room, tasks);
  return tasks;
}

Task Proof::fork_task(const Fork& fork, const TaskMaker& make) const {
  Task task = make.cue_starts(fork.cues, 0);
  task.fork = true;
  task.reason = Reason::fork;
  task.reason_number = fork.bar;
  return task;
}

void Proof::add_forks(int day, int end, const Memory& memory, const TaskMaker& make, double& room,
                      std::vector<Task>& tasks) {
  for (std::size_t i = 0; i < fork_done_.size(); ++i) {
    const Fork& fork = anatomy_.forks[i];
    const bool learned = std::all_of(fork.learned.begin(), fork.learned.end(),
                                     [&](int chunk) { return memory.learned_before(chunk, day); });
    if (fork_done_[i] || !learned) continue;
    Task task = fork_task(fork, make);
    if (task.minutes > room) continue;
    const bool played_known = std::all_of(task.chunks.begin(), task.chunks.end(), [&](int chunk) {
      return memory.learned_before(chunk, day);
    });
    if (!played_known) continue;
    if (!memory.ripe_enough(task.chunks, day) && end - day > kForkAtTheLatest) continue;
    fork_done_[i] = true;
    room -= task.minutes;
    tasks.push_back(std::move(task));
    return;
  }
}

std::vector<int> Proof::cues_to_assign(int day, int count, const Memory& memory,
                                       int next_run) const {
  std::vector<int> cues;
  if (next_run > day && !memory.far_enough(day, next_run)) return cues;
  for (const CueStart& cue : anatomy_.planned.cues) {
    const auto& chunks = anatomy_.starts[cue.number - 1].chunks;
    if (memory.ripe_enough(chunks, day) || (next_run == day && memory.everything_learned()))
      cues.push_back(cue.number);
  }
  std::stable_sort(cues.begin(), cues.end(), [&](int a, int b) {
    if (assigned_[a - 1] != assigned_[b - 1]) return assigned_[a - 1] < assigned_[b - 1];
    return memory.ripeness(anatomy_.starts[a - 1].chunks.front(), day) >
           memory.ripeness(anatomy_.starts[b - 1].chunks.front(), day);
  });
  if (static_cast<int>(cues.size()) > count) cues.resize(count);
  return cues;
}

// The chunks surely played from these cue starts; all chunks when the dice alone decide.
std::vector<int> Proof::chunks_of(const std::vector<int>& cues) const {
  std::vector<int> chunks;
  for (const int cue : cues)
    for (const int chunk : anatomy_.starts[cue - 1].chunks) chunks.push_back(chunk);
  if (cues.empty())
    for (int chunk = 0; chunk < static_cast<int>(anatomy_.planned.chunks.size()); ++chunk)
      chunks.push_back(chunk);
  return chunks;
}

void Proof::add_cue_starts(int position, int day, int end, const Memory& memory,
                           const TaskMaker& make, int next_run, bool begun, double& room,
                           std::vector<Task>& tasks) {
  const bool whole = memory.everything_learned() && memory.last_learning_day() < day;
  const int apart = !whole ? kSessionsApart : end - day <= kLastWeeks ? 1 : kWholeApart;
  // A day that holds a recall anyway may as well hold a session.
  if (position - last_session_ < apart && !(whole && begun)) return;
  const std::vector<int> cues = cues_to_assign(day, whole ? 1 : 2, memory, next_run);
  for (int throws = whole ? method_.cue_throws : 0; throws >= 0; --throws) {
    if (cues.empty() && throws == 0) return;
    Task task = make.cue_starts(cues, throws, memory.progress(chunks_of(cues), day));
    if (task.minutes > room) continue;
    task.reason = Reason::every_start;
    for (const int cue : cues) ++assigned_[cue - 1];
    last_session_ = position;
    room -= task.minutes;
    tasks.push_back(std::move(task));
    return;
  }
}

Task Proof::temper_task(const Tempering& tempering, const TaskMaker& make) const {
  Task task = tempering.drill == Drill::spoken_part ? make.spoken_part(tempering.chunk)
                                                    : make.write_out(tempering.chunk);
  task.reason = Reason::weakest_first;
  return task;
}

void Proof::add_temper(int position, const std::vector<int>& practice_days, int end,
                       const Memory& memory, const TaskMaker& make, double& room,
                       std::vector<Task>& tasks) {
  const int day = practice_days[position];
  if (!memory.everything_learned() || memory.last_learning_day() >= day) return;
  if (end - day <= method_.quiet_days) return;
  int days_left = 0;
  for (int i = position; i < static_cast<int>(practice_days.size()); ++i)
    if (end - practice_days[i] > method_.quiet_days) ++days_left;
  const std::size_t left = temper_.size() - tempered_;
  std::size_t share = (left + days_left - 1) / std::max(1, days_left);
  for (; share > 0 && tempered_ < temper_.size(); --share) {
    Task task = temper_task(temper_[tempered_], make);
    if (task.minutes > room) return;
    room -= task.minutes;
    tasks.push_back(std::move(task));
    ++tempered_;
  }
}

std::vector<Task> Proof::left_over(const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (std::size_t i = 0; i < fork_done_.size(); ++i)
    if (!fork_done_[i]) tasks.push_back(fork_task(anatomy_.forks[i], make));
  for (std::size_t i = tempered_; i < temper_.size(); ++i)
    tasks.push_back(temper_task(temper_[i], make));
  return tasks;
}

}  // namespace cahier
