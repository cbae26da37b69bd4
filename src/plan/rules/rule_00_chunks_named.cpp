// That a task holds exactly the chunks it says it holds, and that they were learned before it:
// an earlier day for what is played from memory or tempered, earlier in the list for a join.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Chunks = std::vector<int>;

Chunks sorted(Chunks chunks) {
  std::sort(chunks.begin(), chunks.end());
  return chunks;
}

bool holds(const Chunks& sorted_chunks, int chunk) {
  return std::binary_search(sorted_chunks.begin(), sorted_chunks.end(), chunk);
}

// Chunks that lie wholly in the task's bars must be named; of those cut short by the edge of a
// return only a share can be played, and they may be named where all of that share is.
void check_bars_hold_chunks(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                            const Task& task, int rule) {
  const Chunks named = sorted(task.chunks);
  Chunks must;
  Chunks may;
  for (int at = piece.occurrence_at[task.bars.first]; at <= piece.occurrence_at[task.bars.last];
       ++at) {
    const Occurrence& occurrence = piece.occurrences[at];
    if (occurrence.chunk < 0 || !task.bars.contains(occurrence.bars)) continue;
    may.push_back(occurrence.chunk);
    if (occurrence.whole) must.push_back(occurrence.chunk);
  }
  must = sorted(must);
  may = sorted(may);
  for (const int chunk : must)
    if (!holds(named, chunk))
      indexed.violation(rule, fmt::format("{} plays chunk {} but does not name it",
                                          in_words(indexed, moment), piece.chunks()[chunk].id));
  for (const int chunk : named)
    if (!holds(may, chunk))
      indexed.violation(rule, fmt::format("{} names chunk {}, which does not lie in its bars",
                                          in_words(indexed, moment), piece.chunks()[chunk].id));
  if (std::adjacent_find(named.begin(), named.end()) != named.end())
    indexed.violation(rule, in_words(indexed, moment) + " names a chunk twice");
}

// The chunks within a chunk's length after a bar, by the piece and by where its notes are learned.
void add_chunks_after(const IndexedPiece& piece, int bar, int length, Chunks& chunks) {
  const int last = piece.planned->piece.bars;
  for (const int start : {bar, piece.learned_bar[bar]})
    for (int at = start; at <= std::min(last, start + length); ++at)
      if (piece.chunk_at[at] >= 0) chunks.push_back(piece.chunk_at[at]);
}

void check_cue_chunks(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                      const Task& task) {
  const std::string what = in_words(indexed, moment);
  if (task.cues.empty() && task.throws == 0)
    return indexed.violation(7, what + " has neither a cue start nor a throw");
  if (task.cues.empty() && task.chunks.empty()) return;  // the dice alone decide
  Chunks near;
  int first = piece.planned->piece.bars;
  int last = 0;
  for (const int number : task.cues) {
    const CueStart* cue = piece.find_cue(number);
    if (cue == nullptr)
      return indexed.violation(
          7, fmt::format("{} assigns cue start {}, which does not exist", what, number));
    first = std::min(first, cue->bar);
    last = std::max(last, cue->bar);
    add_chunks_after(piece, cue->bar, indexed.plan.method.chunk_most, near);
    const int begun = piece.chunk_at[cue->bar];
    if (begun >= 0 && std::find(task.chunks.begin(), task.chunks.end(), begun) == task.chunks.end())
      indexed.violation(5, fmt::format("{} begins in chunk {} but does not name it", what,
                                       piece.chunks()[begun].id));
  }
  near = sorted(near);
  for (const int chunk : task.chunks)
    if (!holds(near, chunk))
      indexed.violation(5, fmt::format("{} names chunk {}, which is near none of its cue starts",
                                       what, piece.chunks()[chunk].id));
  if (task.bars.first != first || task.bars.last < last ||
      task.bars.last > last + 2 * indexed.plan.method.chunk_most)
    indexed.violation(7, fmt::format("{} does not go from its first cue start to its last", what));
}

void check_learned_before(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                          const Task& task, int rule) {
  const bool by_day = task.drill != Drill::join;
  for (const int chunk : task.drill == Drill::cue_starts ? task.chunks : piece.touched(task.bars)) {
    const auto& learned = piece.learned[chunk];
    if (learned && (by_day ? learned->day < moment.day : *learned < moment)) continue;
    indexed.violation(rule, fmt::format("{} needs chunk {} ({}), which is not learned {}",
                                        in_words(indexed, moment), piece.chunks()[chunk].id,
                                        in_words(piece.chunks()[chunk].bars),
                                        by_day ? "on an earlier day" : "before"));
  }
}

int rule_of(Drill drill) {
  if (drill == Drill::join) return 4;
  if (drill == Drill::run_through) return 6;
  return is_retrieval(drill) ? 5 : 9;
}

}  // namespace

void check_covered(IndexedPlan& indexed) {
  indexed.each_planned([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::learn) return;
    const IndexedPiece& piece = indexed.pieces[task.piece];
    const int rule = rule_of(task.drill);
    if (task.drill == Drill::cue_starts)
      check_cue_chunks(indexed, piece, moment, task);
    else
      check_bars_hold_chunks(indexed, piece, moment, task, rule);
    check_learned_before(indexed, piece, moment, task, rule);
  });
}

}  // namespace cahier
