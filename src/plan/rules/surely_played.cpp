#include "plan/rules/surely_played.h"

#include <algorithm>

namespace cahier {
namespace {

bool begins_a_passage(const IndexedPiece& piece, int bar) {
  return bar == piece.planned->piece.first_bar() ||
         piece.occurrence_at[bar] != piece.occurrence_at[bar - 1] ||
         piece.section_at[bar] != piece.section_at[bar - 1];
}

int end_of_passage(const IndexedPiece& piece, int bar) {
  while (bar < piece.planned->piece.bars && !begins_a_passage(piece, bar + 1)) ++bar;
  return bar;
}

int end_of_start(const IndexedPiece& piece, int bar) {
  int end = end_of_passage(piece, bar);
  if (!begins_a_passage(piece, bar) && end < piece.planned->piece.bars)
    end = end_of_passage(piece, end + 1);
  const auto past_fork = piece.past_fork.find(bar);
  return past_fork == piece.past_fork.end() ? end : std::max(end, past_fork->second);
}

}  // namespace

void index_forks(IndexedPiece& piece) {
  for (const LookAlikes& group : piece.planned->piece.look_alikes)
    for (std::size_t at = 0; at < group.passages.size(); ++at) {
      const int fork = group.forks[at];
      int before = -1;
      int on = -1;
      for (const CueStart& cue : piece.planned->cues) {
        if (!group.passages[at].contains(cue.bar)) continue;
        if (cue.bar < fork) before = std::max(before, cue.bar);
        if (cue.bar == fork) on = cue.bar;
      }
      const int start = before >= 0 ? before : on;
      if (start < 0) continue;
      int& end = piece.past_fork[start];
      end = std::max(end, end_of_passage(piece, fork));
    }
}

std::vector<int> bars_begun_from(const IndexedPlan& indexed, const Moment& moment) {
  const Task& task = indexed.task(moment);
  std::vector<int> bars;
  if (indexed.is_past(moment)) {
    for (const BarRange& played : task.from_starts) bars.push_back(played.first);
    return bars;
  }
  for (const int number : task.cues)
    if (const CueStart* cue = indexed.pieces[task.piece].find_cue(number)) bars.push_back(cue->bar);
  return bars;
}

std::vector<BarRange> surely_played(const IndexedPlan& indexed, const Moment& moment) {
  const Task& task = indexed.task(moment);
  if (task.drill != Drill::cue_starts) return {task.bars};
  std::vector<BarRange> played;
  for (const int bar : bars_begun_from(indexed, moment))
    played.push_back({bar, end_of_start(indexed.pieces[task.piece], bar)});
  return played;
}

}  // namespace cahier
