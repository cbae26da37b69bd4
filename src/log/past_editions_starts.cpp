// What the cue starts of past workbooks were, by their numbers.
#include <algorithm>

#include "log/past_editions.h"

namespace cahier {

const std::vector<int>& PastEditions::cue_bars(PastEdition& edition, int piece) {
  if (edition.cues.empty())
    for (const PlannedPiece& planned : plan_of(edition).pieces) {
      std::vector<int>& bars = edition.cues.emplace_back();
      for (const CueStart& cue : planned.cues) bars.push_back(cue.bar);
    }
  return edition.cues[piece];
}

void PastEditions::take_own_line(const LoggedEdition& written) {
  if (written.cues.size() != pieces_.size()) return;
  std::vector<std::vector<int>> cues(pieces_.size());
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece)
    for (const Written<int>& bar : written.cues[piece]) {
      // Of a workbook that was printed before the piece file was changed.
      if (!pieces_[piece].whole().contains(bar.value) ||
          std::ranges::find(cues[piece], bar.value) != cues[piece].end())
        return;
      cues[piece].push_back(bar.value);
    }
  own_cues_ = std::move(cues);
}

std::vector<NumberedStarts> PastEditions::numbered_starts() {
  return numbered_starts(editions_.size(), own_cues_);
}

std::vector<NumberedStarts> PastEditions::numbered_starts(
    std::size_t index, const std::vector<std::vector<int>>& told) {
  std::vector<NumberedStarts> all;
  if (index == 0 && told.empty()) return all;
  all.resize(pieces_.size());
  // Each goes by the one before: the earliest first.
  std::size_t next = index;
  while (next > 0 && editions_[next - 1].cues.empty()) --next;
  for (; next < index; ++next) cue_bars(editions_[next], 0);
  for (std::size_t piece = 0; piece < pieces_.size(); ++piece) {
    NumberedStarts& starts = all[piece];
    if (index > 0) starts.bars = cue_bars(editions_[index - 1], static_cast<int>(piece));
    starts.before = static_cast<int>(starts.bars.size());
    if (told.empty() || told[piece].empty()) continue;
    const bool goes_on = std::ranges::mismatch(starts.bars, told[piece]).in1 == starts.bars.end();
    starts.bars = told[piece];
    if (!goes_on) starts.before = static_cast<int>(starts.bars.size());
  }
  return all;
}

}  // namespace cahier
