#include "plan/schedule/thin_days.h"

#include <algorithm>
#include <optional>

namespace cahier {
namespace {

constexpr double kWorthwhile = 3;  // minutes

// What was learned of a stretch on earlier days and has no other turn today, two chunks at least.
std::optional<BarRange> idle_part(const Ledger& ledger, const Desk& desk, int index, int day) {
  const Stretch& stretch = desk.anatomy.stretches[index];
  const auto& tasks = ledger.draft.days[day].tasks;
  const auto idle = [&](int chunk) {
    return std::none_of(tasks.begin(), tasks.end(), [&](const Task& other) {
      return &desk == ledger.desks[other.piece].get() &&
             std::find(other.chunks.begin(), other.chunks.end(), chunk) != other.chunks.end();
    });
  };
  int last = stretch.first_chunk;
  while (last <= stretch.last_chunk && desk.memory.learned_before(last, day) && idle(last)) ++last;
  if (last - stretch.first_chunk < 2) return std::nullopt;
  const auto& chunks = desk.anatomy.planned.chunks;
  return BarRange{chunks[stretch.first_chunk].bars.first, chunks[last - 1].bars.last};
}

}  // namespace

void Filler::fill(Ledger& ledger, int day) {
  if (ledger.draft.days[day].tasks.empty()) return;
  for (auto& desk : ledger.desks) fill(ledger, *desk, day);
}

void Filler::fill(Ledger& ledger, Desk& desk, int day) {
  const int count = static_cast<int>(desk.anatomy.stretches.size());
  const int from = turn_;
  for (int turn = 0; turn < count; ++turn) {
    if (ledger.draft.days[day].minutes() >= kWorthwhile) return;
    const int index = (from + turn) % count;
    const auto bars = idle_part(ledger, desk, index, day);
    if (!bars) continue;
    Task task = desk.make.join(*bars);
    if (task.minutes > ledger.room[day] || !ledger.stands_apart(task, day)) continue;
    turn_ = index + 1;
    task.reason = Reason::worthwhile;
    ledger.put(std::move(task), day);
  }
}

}  // namespace cahier
