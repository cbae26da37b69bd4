#include "plan/schedule/runs_aside.h"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "plan/due/growing_runs.h"
#include "plan/due/longer_stretches.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// The day on which the last chunk of a piece is learned, when each day takes its even share.
int learned_by(const Draft& draft, const Pace& pace, int piece) {
  if (!pace.learned_on.empty() && pace.learned_on[piece] >= 0) return pace.learned_on[piece];
  std::vector<int> learning_days;
  for (const int day : draft.practice_days)
    if (day <= pace.learn_until) learning_days.push_back(day);
  double before = 0;  // minutes of learning, up to the piece's last chunk
  double all = 0;     // up to the last chunk of all
  for (int i = 0; i + 1 < pace.chunks; ++i) {
    const Work::Item& item = draft.work.order[i];
    all += draft.work.analyses[item.piece].learn_minutes[item.chunk];
    if (draft.work.order[i + 1].piece == piece) before = all;
  }
  if (learning_days.empty()) return pace.learn_until;
  if (all <= 0) return learning_days.front();
  const double share = before / all * static_cast<double>(learning_days.size() - 1);
  return learning_days[static_cast<std::size_t>(std::ceil(share))];
}

// One who has made them all plays it through twice more before the date, where there is room.
RunsAsked runs_asked(const Draft& draft, const PieceProgress& progress) {
  RunsAsked asked = progress.runs_asked(draft.work.terms);
  asked.more = std::max(0, numbers::kMoreRuns - asked.runs);
  return asked;
}

// Once a day, so far as the days reach, where all that are asked for have no room; where each takes
// a day of its own, on every other day.
RunDays few_run_days(const Draft& draft, RunsAsked asked, double minutes) {
  const auto most = [](double all, const Day& day) { return std::max(all, day.allowance); };
  const auto& days = draft.schedule.days;
  const bool alone = minutes > std::accumulate(days.begin(), days.end(), 0.0, most);
  const int fit = static_cast<int>(draft.practice_days.size());
  RunsAsked few = asked;
  few.more = 0;
  few.runs = std::min(asked.runs, alone ? (fit + 1) / 2 : fit);
  RunDays runs = choose_run_days(draft.work.terms.method, days, draft.room, draft.work.first, few,
                                 minutes, false);
  runs.missing = std::max(runs.missing, asked.runs - few.runs);
  return runs;
}

RunDays run_days(const Draft& draft, const Pace& pace, int piece) {
  const PieceProgress& progress = *draft.pieces[piece];
  const double minutes = progress.analysis.time.run_through();
  RunsAsked asked = runs_asked(draft, progress);
  if (pace.last_days) return few_run_days(draft, asked, minutes);
  if (pace.more_runs)
    if (auto growing = choose_growing_runs(draft.work.terms.method, draft.schedule.days, draft.room,
                                           learned_by(draft, pace, piece), asked, minutes))
      return *std::move(growing);
  return choose_run_days(draft.work.terms.method, draft.schedule.days, draft.room,
                         pace.learn_until + 1, asked, minutes, pace.catch_up);
}

}  // namespace

void set_runs_aside(Draft& draft, const Pace& pace) {
  if (!pace.runs) {
    for (auto& progress : draft.pieces) progress->runs.runs.assign(draft.end, 0);
    return;
  }
  for (int piece = 0; piece < static_cast<int>(draft.pieces.size()); ++piece) {
    auto& progress = draft.pieces[piece];
    draft.set_aside(*progress, run_days(draft, pace, piece));
    progress->recalls.tempo().be_at_tempo_by(progress->next_run(-1), progress->runs_made == 0);
  }
  for (auto& progress : draft.pieces) {
    const int first_run = progress->next_run(-1);
    if (first_run < 0) continue;
    if (pace.catch_up)
      progress->reserved =
          reserve_longer_stretches(progress->analysis, progress->make, draft.work.terms.method,
                                   draft.room, pace.learn_until, first_run);
    else
      progress->ask_for_halves();
  }
}

std::optional<Pace> with_sooner_runs(const Work& work, Pace pace, const Schedule& schedule) {
  if (!pace.more_runs || !schedule.unplaced.empty()) return std::nullopt;
  pace.learned_on.assign(work.analyses.size(), -1);
  std::vector<int> first_run(work.analyses.size(), -1);
  for (int day = 0; day < static_cast<int>(schedule.days.size()); ++day)
    for (const Task& task : schedule.days[day].tasks) {
      if (task.drill == Drill::learn) pace.learned_on[task.piece] = day;
      if (task.drill == Drill::run_through && first_run[task.piece] < 0)
        first_run[task.piece] = day;
    }
  for (std::size_t piece = 0; piece < first_run.size(); ++piece)
    if (pace.learned_on[piece] >= 0 &&
        first_run[piece] - pace.learned_on[piece] > work.terms.method.first_run_days)
      return pace;
  return std::nullopt;
}

void give_runs_back(Draft& draft) {
  for (auto& progress : draft.pieces) {
    if (progress->recalls.everything_learned()) continue;
    const double minutes = progress->analysis.time.run_through();
    for (int day = 0; day < draft.end; ++day) {
      const int runs = std::exchange(progress->runs.runs[day], 0);
      if (runs == 0) continue;
      Day& of = draft.schedule.days[day];
      draft.room[day] = progress->runs.alone ? of.allowance : draft.room[day] + runs * minutes;
      if (progress->runs.alone) of.note = DayNote::none;
    }
  }
}

}  // namespace cahier
