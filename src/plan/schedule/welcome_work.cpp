#include "plan/schedule/welcome_work.h"

#include <utility>

#include "plan/due/recall_kinds.h"
#include "practice/numbers.h"

namespace cahier {
bool WelcomeWork::put(PieceProgress& progress, Task task, int day) {
  if (task.minutes > draft_.room[day]) return false;
  progress.played(task, day);
  draft_.put(std::move(task), day);
  return true;
}

void WelcomeWork::recall_sooner(int day) {
  recall(day, [&](const PieceProgress& progress) { return progress.recalls.wants_sooner(day); });
}

void WelcomeWork::recall_hard(int day) {
  // Where something slips, the minutes are its own.
  recall(day, [&](const PieceProgress& progress) {
    return progress.slips() ? std::vector<Want>{} : progress.recalls.hard_on(day);
  });
}

void WelcomeWork::recall(int day,
                         const std::function<std::vector<Want>(const PieceProgress&)>& wanted) {
  if (!has_room(day) || !draft_.is_welcome(Drill::recall, day)) return;
  for (auto& progress : draft_.pieces) {
    if (progress->runs.runs[day] > 0) continue;
    for (const Want& want : wanted(*progress)) {
      if (progress->make.minutes(Drill::recall, want.bars) > draft_.room[day]) continue;
      Task task =
          progress->make.recall(want.bars, progress->recalls.tempo_progress(want.chunks, day));
      task.reason = Reason::sooner;
      put(*progress, std::move(task), day);
    }
  }
}

void WelcomeWork::play_sections(int day, Sections which) {
  if (!has_room(day)) return;
  for (auto& progress : draft_.pieces) {
    if (progress->runs.runs[day] > 0) continue;
    for (const WholeStretch& one : progress->sections.on_day(progress->recalls, day)) {
      if (which == Sections::that_press && !one.presses) continue;
      if (progress->make.minutes(Drill::recall, one.bars) > draft_.room[day]) continue;
      const std::vector<int> chunks = progress->analysis.chunks_in(one.bars);
      Task task = progress->make.recall(one.bars, progress->recalls.tempo_progress(chunks, day));
      task.reason = one.reason;
      put(*progress, std::move(task), day);
    }
  }
}

void WelcomeWork::join_returns(int day) {
  if (!has_room(day) || !draft_.is_welcome(Drill::join, day)) return;
  for (auto& progress : draft_.pieces) {
    if (progress->runs.runs[day] > 0 || !progress->recalls.everything_learned()) continue;
    for (Task& task : progress->return_seams.on_day(day, draft_.end, progress->make))
      if (task.minutes <= draft_.room[day] && draft_.stands_apart(task, day))
        draft_.put(std::move(task), day);
  }
}

int WelcomeWork::passes_wanted(const PieceProgress& progress) const {
  const Method& method = draft_.work.terms.method;
  return draft_.end - progress.recalls.last_learning_day() >= method.second_pass_days
             ? method.passes
             : 1;
}

void WelcomeWork::pass(int day) {
  if (!has_room(day) || !draft_.is_welcome(Drill::slow_pass, day)) return;
  for (auto& progress : draft_.pieces) {
    if (!progress->recalls.everything_learned()) continue;
    for (Task& task :
         progress->passes_due.on_day(progress->recalls, progress->make, day, draft_.room[day],
                                     passes_wanted(*progress), numbers::kPassRipe)) {
      // A day of passes alone is a dull one: they take turns, until the date is near.
      if (draft_.end - day > numbers::kPassesAtLast && uses(day, numbers::kPassesUpTo)) break;
      put(*progress, std::move(task), day);
    }
  }
}

bool WelcomeWork::has_room(int day) const { return draft_.room[day] > 0; }

bool WelcomeWork::is_full(int day) const { return uses(day, draft_.full_share()); }

bool WelcomeWork::uses(int day, double share) const {
  const double allowance = draft_.schedule.days[day].allowance;
  return allowance - draft_.room[day] >= share * allowance;
}

void WelcomeWork::fill_up(int day) {
  const bool begun = draft_.room[day] < draft_.schedule.days[day].allowance;
  if (!begun || !draft_.is_welcome(Drill::slow_pass, day)) return;
  for (auto& progress : draft_.pieces)
    for (const Want& want : progress->recalls.weak_on(day)) {
      if (is_full(day)) return;
      Task task =
          recall_turn(*progress, want.bars, want.chunks,
                      progress->weak_turns % 2 == 0 ? kSlowly : kFromMemory, day, draft_.room[day]);
      task.reason = Reason::sooner;
      if (put(*progress, std::move(task), day)) ++progress->weak_turns;
    }
  for (auto& progress : draft_.pieces) {
    // Where something slips, the minutes are its own.
    if (progress->slips()) continue;
    for (Task& task :
         progress->passes_due.on_day(progress->recalls, progress->make, day, draft_.room[day],
                                     numbers::kManyPasses, numbers::kPassAgain)) {
      if (is_full(day)) return;
      task.reason = Reason::worthwhile;
      put(*progress, std::move(task), day);
    }
    for (const Stretch& stretch : progress->analysis.stretches) {
      if (is_full(day)) return;
      const std::vector<int> chunks = stretch.chunks();
      if (!progress->recalls.ripe_enough(chunks, day, numbers::kWholeAgain)) continue;
      Task task =
          progress->make.recall(stretch.bars, progress->recalls.tempo_progress(chunks, day));
      task.reason = Reason::worthwhile;
      put(*progress, std::move(task), day);
    }
  }
}

void WelcomeWork::play_silently(int day) {
  if (!has_room(day) || draft_.schedule.days[day].tasks.empty()) return;
  if (!draft_.is_welcome(Drill::silent_run, day)) return;
  const int days_between = draft_.work.terms.method.silent_days;
  for (auto& progress : draft_.pieces) {
    if (progress->slips() || progress->runs.runs[day] > 0) continue;
    auto& known = silent_.try_emplace(progress.get(), last_silent(*progress), -1).first->second;
    int& last = known.first;
    int& section = known.second;
    if (day - last < days_between) continue;
    const auto put_silently = [&](BarRange bars) {
      if (progress->make.minutes(Drill::silent_run, bars) > draft_.room[day]) return false;
      if (!progress->recalls.learned_before(progress->analysis.chunks_touching(bars), day))
        return false;
      Task task = progress->make.of_bars(Drill::silent_run, bars);
      task.reason = Reason::worthwhile;
      draft_.put(std::move(task), day);
      last = day;
      return true;
    };
    if (put_silently(progress->analysis.planned.piece.whole())) return;
    const auto& sections = progress->analysis.planned.sections;
    const int count = static_cast<int>(sections.size());
    for (int next = 1; next <= count; ++next) {
      const int turn = (section + next) % count;
      if (sections[turn].same_as || !put_silently(sections[turn].bars)) continue;
      section = turn;
      return;
    }
  }
}

int WelcomeWork::last_silent(const PieceProgress& progress) const {
  int last = -draft_.work.terms.method.silent_days;
  for (const Day& day : draft_.work.past)
    for (const Task& task : day.tasks)
      if (task.drill == Drill::silent_run && draft_.pieces[task.piece].get() == &progress)
        last = draft_.work.index_of(day.date);
  return last;
}

}  // namespace cahier
