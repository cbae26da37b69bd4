#include "plan/due/sections_due.h"

#include <algorithm>

#include "practice/numbers.h"

namespace cahier {

SectionsDue::SectionsDue(const Analysis& analysis, const Method& method) : method_(method) {
  for (const PlannedSection& section : analysis.planned.sections) {
    if (section.same_as || section.bars.size() < numbers::kLeastWholeBars) continue;
    std::vector<Part> parts;
    std::vector<int> all;
    for (const Stretch& stretch : analysis.stretches) {
      if (!section.bars.contains(stretch.bars)) continue;
      if (parts.empty() || stretch.bars.last - parts.back().bars.first + 1 > method_.section_bars)
        parts.push_back({stretch.bars, {}, {}});
      parts.back().bars.last = stretch.bars.last;
      for (const int chunk : stretch.chunks()) {
        parts.back().chunks.push_back(chunk);
        all.push_back(chunk);
      }
    }
    for (Part& part : parts) {
      part.section_chunks = all;
      waiting_.push_back(std::move(part));
    }
  }
}

std::vector<BarRange> SectionsDue::on_day(const RecallsDue& recalls, int day) const {
  std::vector<BarRange> due;
  for (const Part& part : waiting_) {
    const bool ready = recalls.learned_before(part.section_chunks, day) &&
                       std::none_of(part.chunks.begin(), part.chunks.end(),
                                    [&](int chunk) { return recalls.waits_for_first(chunk); });
    if (ready) due.push_back(part.bars);
  }
  std::stable_partition(due.begin(), due.end(),
                        [&](const BarRange& part) { return presses(part, recalls, day); });
  return due;
}

bool SectionsDue::presses(BarRange bars, const RecallsDue& recalls, int day) const {
  const int pressing = method_.section_days - numbers::kSectionSpare;
  const auto part = std::find_if(waiting_.begin(), waiting_.end(),
                                 [&](const Part& one) { return one.bars == bars; });
  return part != waiting_.end() &&
         std::all_of(part->section_chunks.begin(), part->section_chunks.end(),
                     [&](int chunk) { return recalls.learned_before(chunk, day - pressing); });
}

void SectionsDue::played(const Task& task) {
  if (task.drill == Drill::run_through || covers(task.drill, Covers::starts)) return;
  std::erase_if(waiting_, [&](const Part& part) { return task.bars.contains(part.bars); });
}

}  // namespace cahier
