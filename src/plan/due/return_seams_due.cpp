#include "plan/due/return_seams_due.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {
namespace {

bool is_drilled(const Analysis& analysis, int at) {
  return std::ranges::any_of(analysis.fork_drills, [at](const ForkDrill& drill) {
    return std::ranges::any_of(
        drill.ways, [at](const PlayedWay& way) { return way.at == at && way.to == at + 1; });
  });
}

}  // namespace

ReturnSeamsDue::ReturnSeamsDue(const Analysis& analysis, const Method& method) : method_(method) {
  for (const Join& join : analysis.joins) {
    const Passage& before = analysis.passages[join.left];
    const Passage& after = analysis.passages[join.left + 1];
    // Where it is learned, too: the other time it goes on in another way, or ends.
    const bool comes_back =
        std::ranges::any_of(analysis.planned.sections, [&](const PlannedSection& section) {
          return section.same_as && section.same_as->last == before.bars.last;
        });
    const bool leads_out = before.section != after.section && (before.in_return || comes_back);
    if (leads_out && !is_drilled(analysis, before.bars.last))
      seams_.push_back({{before.bars.first, after.bars.last}, before.bars.last});
  }
}

void ReturnSeamsDue::played(const Task& task, int day) {
  if (!facts_of(task.drill).plays_across) return;
  for (auto seam = std::ranges::lower_bound(seams_, task.bars.first, {}, &Seam::at);
       seam != seams_.end() && seam->at < task.bars.last; ++seam) {
    if (seam->last == day) continue;
    if (seam->times++ == 0) seam->first = day;
    seam->last = day;
  }
}

bool ReturnSeamsDue::is_due(const Seam& seam, int day, int end) const {
  if (seam.times == 0 || seam.times >= method_.fork_drills) return false;
  // Nearer to the first than to the third, which is still to come.
  if (seam.times == 1)
    return day - seam.first >= std::max(numbers::kForkLeastGap, (end - seam.first) / 3);
  return day - seam.last > seam.last - seam.first;
}

std::vector<Task> ReturnSeamsDue::on_day(int day, int end, const TaskMaker& make) const {
  std::vector<Task> tasks;
  for (const Seam& seam : seams_) {
    if (!is_due(seam, day, end)) continue;
    tasks.push_back(make.join(seam.bars));
    tasks.back().reason = Reason::joins_return;
  }
  return tasks;
}

}  // namespace cahier
