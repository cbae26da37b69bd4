#include "plan/due/tempo_steps.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
TempoSteps::TempoSteps(const Analysis& analysis, const Method& method, int end)
    : analysis_(analysis),
      method_(method),
      end_(end),
      learned_(analysis.planned.chunks.size(), -1),
      reached_(learned_.size(), 0),
      near_tempo_(learned_.size(), 0) {}

void TempoSteps::recalled(const Task& task, const std::vector<int>& chunks) {
  if (!task.tempo) return;
  const Tempo full = tempo_or_usual(analysis_.planned.piece, task.bars.first);
  const double share = *task.tempo * quarters(task.beat) / full.quarters_per_minute();
  const double wanted = analysis_.time.mark(task.bars.first, method_.proved_tempo, task.beat);
  const bool near = *task.tempo >= wanted - 1e-9;
  for (const int chunk : chunks) {
    reached_[chunk] = share;
    near_tempo_[chunk] += near ? 1 : 0;
  }
}

void TempoSteps::climbed(const std::vector<int>& chunks) {
  for (const int chunk : chunks) {
    double& reached = reached_[chunk];
    reached = std::min(1.0, reached > 0 ? reached + step() : first_step() * learn_share(chunk));
    near_tempo_[chunk] += reached >= method_.proved_tempo ? 1 : 0;
  }
}

bool TempoSteps::wants_tempo(int chunk, int day) const {
  return first_run_to_come_ && near_tempo_[chunk] < method_.proved_times && at_tempo_by_ > day &&
         at_tempo_by_ - day <= numbers::kProvingDays;
}

template <typename ShareOf>
double TempoSteps::progress_by(const std::vector<int>& chunks, ShareOf share_of) const {
  if (at_tempo_) return 1;
  double together = 1;
  double slowest = 1;
  for (const int chunk : chunks) {
    together = std::min(together, share_of(chunk));
    slowest = std::min(slowest, learn_share(chunk));
  }
  return slowest < 1 ? std::clamp((together - slowest) / (1 - slowest), 0.0, 1.0) : 1;
}

double TempoSteps::progress(const std::vector<int>& chunks, int day) const {
  return progress_by(chunks, [&](int chunk) { return share(chunk, day); });
}

double TempoSteps::reached_progress(const std::vector<int>& chunks) const {
  if (ran_through_) return 1;
  return progress_by(chunks, [&](int chunk) {
    return reached_[chunk] > 0 ? reached_[chunk] : learn_share(chunk);
  });
}

double TempoSteps::learn_share(int chunk) const {
  return analysis_.time.share(Drill::learn, analysis_.planned.chunks[chunk].level);
}

// Of the performance tempo: rising evenly towards the day on which the whole is played, but by no
// more than a step from one recall to the next.
double TempoSteps::share(int chunk, int day) const {
  const double learned = learn_share(chunk);
  const int since = learned_[chunk];
  const double whole = at_tempo_by_ > since ? numbers::kToTempo * (at_tempo_by_ - since)
                                            : numbers::kToTempoAtLast * (end_ - since);
  const double even = learned + (1 - learned) * (day - since) / std::max(1.0, whole);
  const double most = reached_[chunk] > 0 ? reached_[chunk] + step() : first_step() * learned;
  return std::min({1.0, even, most});
}

}  // namespace cahier
