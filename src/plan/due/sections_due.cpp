#include "plan/due/sections_due.h"

#include <algorithm>
#include <cstdlib>

#include "plan/phrase_map.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

// Where a phrase begins, else where a chunk does, nearest to `bar`; at `bar` where neither does.
int cut_near(int bar, BarRange among, const Analysis& analysis) {
  const PhraseMap phrases(analysis.planned);
  if (const int start = phrases.nearest_start(bar, among); phrases.begins(start)) return start;
  int nearest = -1;
  for (const Passage& passage : analysis.passages)
    if (among.contains(passage.bars.first) &&
        (nearest < 0 || std::abs(passage.bars.first - bar) < std::abs(nearest - bar)))
      nearest = passage.bars.first;
  return nearest < 0 ? bar : nearest;
}

}  // namespace

SectionsDue::SectionsDue(const Analysis& analysis, const Method& method) : method_(method) {
  for (const PlannedSection& section : analysis.planned.sections) {
    if (section.same_as || section.bars.size() < numbers::kLeastWholeBars) continue;
    std::vector<Part> parts;
    std::vector<int> all;
    for (const Stretch& stretch : analysis.stretches) {
      if (!section.bars.contains(stretch.bars)) continue;
      if (parts.empty() || stretch.bars.last - parts.back().bars.first + 1 > method_.section_bars)
        parts.push_back({stretch.bars, {}, {}, Reason::section});
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

void SectionsDue::add_half(BarRange half, const Analysis& analysis, int first_run) {
  const int counted = half.size() - (half.first == 0 ? 1 : 0);  // an upbeat is no bar
  const int parts = (counted + method_.section_bars - 1) / method_.section_bars;
  const std::vector<int> all = analysis.chunks_touching(half);
  int first = half.first;
  for (int part = 1; part <= parts; ++part) {
    const int even = half.first + half.size() * part / parts;
    const int next =
        part == parts ? half.last + 1 : cut_near(even, {first + 1, half.last}, analysis);
    const BarRange bars{first, next - 1};
    waiting_.push_back({bars, analysis.chunks_touching(bars), all, Reason::half, first_run});
    first = next;
  }
}

std::vector<WholeStretch> SectionsDue::on_day(const RecallsDue& recalls, int day) const {
  std::vector<WholeStretch> due;
  for (const Part& part : waiting_) {
    const bool ready = day < part.before && recalls.learned_before(part.section_chunks, day) &&
                       std::none_of(part.chunks.begin(), part.chunks.end(),
                                    [&](int chunk) { return recalls.waits_for_first(chunk); });
    if (ready) due.push_back({part.bars, part.reason, presses(part, recalls, day)});
  }
  std::stable_partition(due.begin(), due.end(),
                        [](const WholeStretch& one) { return one.presses; });
  return due;
}

bool SectionsDue::presses(const Part& part, const RecallsDue& recalls, int day) const {
  const int pressing = method_.section_days - numbers::kSectionSpare;
  return part.reason == Reason::half || recalls.learned_before(part.section_chunks, day - pressing);
}

void SectionsDue::played(const Task& task) {
  if (task.drill == Drill::run_through || covers(task.drill, Covers::starts)) return;
  std::erase_if(waiting_, [&](const Part& part) { return task.bars.contains(part.bars); });
}

}  // namespace cahier
