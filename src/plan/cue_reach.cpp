#include "plan/cue_reach.h"

#include <algorithm>

#include "practice/time_model.h"

namespace cahier {
namespace {

// The chunk that holds a bar, where it stands: itself, or again in a return.
BarRange chunk_around(const PlannedPiece& piece, int bar) {
  const int learned = piece.piece.learned_bar(bar);
  BarRange around{bar, bar};
  for (const Chunk& chunk : piece.chunks)
    if (chunk.bars.contains(learned))
      around = {chunk.bars.first + bar - learned, chunk.bars.last + bar - learned};
  for (const PlannedSection& section : piece.sections)
    if (section.bars.contains(bar))
      around = {std::max(around.first, section.bars.first),
                std::min(around.last, section.bars.last)};
  return around;
}

}  // namespace

int last_bar_from(const PlannedPiece& piece, const CueStart& cue) {
  const BarRange chunk = chunk_around(piece, cue.bar);
  int last = chunk.last;
  if (chunk.first < cue.bar && last < piece.piece.bars) last = chunk_around(piece, last + 1).last;
  for (const LookAlikes& group : piece.piece.look_alikes)
    for (std::size_t at = 0; at < group.passages.size(); ++at)
      if (cue_before_fork(piece, group.passages[at], group.forks[at]) == &cue)
        last = std::max(last, chunk_around(piece, group.forks[at]).last);
  return last;
}

const CueStart* cue_before_fork(const PlannedPiece& piece, BarRange passage, int fork) {
  const CueStart* before = nullptr;
  const CueStart* on_fork = nullptr;
  for (const CueStart& cue : piece.cues) {
    if (!passage.contains(cue.bar)) continue;
    if (cue.bar == fork) on_fork = &cue;
    if (cue.bar < fork && (!before || before->bar < cue.bar)) before = &cue;
  }
  return before ? before : on_fork;
}

std::vector<int> tempo_changes_from(const PlannedPiece& piece, const CueStart& cue) {
  std::vector<int> bars;
  Tempo before = tempo_or_usual(piece.piece, cue.bar);
  for (const BarRange played{cue.bar, last_bar_from(piece, cue)};
       const Change& change : piece.piece.changes) {
    if (change.bar <= cue.bar || !played.contains(change.bar)) continue;
    const Tempo tempo = tempo_or_usual(piece.piece, change.bar);
    if (tempo != before) bars.push_back(change.bar);
    before = tempo;
  }
  return bars;
}

}  // namespace cahier
