#include "plan/schedule/thin_days.h"

#include <algorithm>
#include <optional>

#include "practice/numbers.h"

namespace cahier {
namespace {

// What was learned of a stretch on earlier days and has no other turn today, two chunks at least.
std::optional<BarRange> idle_part(const Draft& draft, const PieceProgress& progress, int index,
                                  int day) {
  const Stretch& stretch = progress.analysis.stretches[index];
  const auto& tasks = draft.schedule.days[day].tasks;
  const auto plays_of = [&](const Task& other, int chunk) {
    if (std::find(other.chunks.begin(), other.chunks.end(), chunk) != other.chunks.end())
      return true;
    const BarRange& bars = progress.analysis.planned.chunks[chunk].bars;
    return std::any_of(other.from_starts.begin(), other.from_starts.end(),
                       [&](const BarRange& played) { return played.overlaps(bars); });
  };
  const auto idle = [&](int chunk) {
    return std::none_of(tasks.begin(), tasks.end(), [&](const Task& other) {
      return &progress == draft.pieces[other.piece].get() && plays_of(other, chunk);
    });
  };
  int last = stretch.first_chunk;
  while (last <= stretch.last_chunk && progress.recalls.learned_before(last, day) && idle(last))
    ++last;
  if (last - stretch.first_chunk < 2) return std::nullopt;
  const auto& chunks = progress.analysis.planned.chunks;
  return BarRange{chunks[stretch.first_chunk].bars.first, chunks[last - 1].bars.last};
}

}  // namespace

void ThinDays::fill(Draft& draft, int day) {
  if (draft.schedule.days[day].tasks.empty()) return;
  for (auto& progress : draft.pieces) fill(draft, *progress, day);
}

void ThinDays::fill(Draft& draft, PieceProgress& progress, int day) {
  const int count = static_cast<int>(progress.analysis.stretches.size());
  const int from = turn_;
  for (int turn = 0; turn < count; ++turn) {
    if (draft.schedule.days[day].minutes() >= numbers::kWorthwhileMinutes) return;
    const int index = (from + turn) % count;
    const auto filled = filled_.find({&progress, index});
    if (filled != filled_.end() && day - filled->second < numbers::kThinDaysApart) continue;
    const auto bars = idle_part(draft, progress, index, day);
    if (!bars) continue;
    Task task = progress.make.join(*bars);
    if (task.minutes > draft.room[day] || !draft.stands_apart(task, day)) continue;
    turn_ = index + 1;
    filled_[{&progress, index}] = day;
    task.reason = Reason::worthwhile;
    draft.put(std::move(task), day);
  }
}

}  // namespace cahier
