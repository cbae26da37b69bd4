// That a task names the chunks that it surely plays from end to end and no others, and that all
// that it plays was learned before it: on an earlier day for what is played from memory or
// tempered, earlier in the list for a join.
#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "plan/rules/each_rule.h"
#include "plan/rules/surely_played.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;
using Chunks = std::vector<int>;

Chunks sorted(Chunks chunks) {
  std::sort(chunks.begin(), chunks.end());
  return chunks;
}

bool holds(const Chunks& sorted_chunks, int chunk) {
  return std::binary_search(sorted_chunks.begin(), sorted_chunks.end(), chunk);
}

// The chunks that stand as a whole in one of the stretches, themselves or in a return.
Chunks standing_in(const IndexedPiece& piece, const std::vector<BarRange>& played) {
  Chunks chunks;
  for (const BarRange& bars : played)
    for (int at = piece.occurrence_at[bars.first]; at <= piece.occurrence_at[bars.last]; ++at) {
      const Occurrence& occurrence = piece.occurrences[at];
      if (occurrence.whole && bars.contains(occurrence.bars)) chunks.push_back(occurrence.chunk);
    }
  return sorted(std::move(chunks));
}

// By bar: whether its notes are played.
std::vector<bool> played_sources(const IndexedPiece& piece, const std::vector<BarRange>& played) {
  std::vector<bool> sources(piece.learned_bar.size(), false);
  for (const BarRange& bars : played)
    for (int bar = bars.first; bar <= bars.last; ++bar) sources[piece.learned_bar[bar]] = true;
  return sources;
}

void check_names(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                 const Task& task, const std::vector<BarRange>& played, int rule) {
  const Chunks named = sorted(task.chunks);
  const std::vector<bool> sources = played_sources(piece, played);
  // One that is cut short by the edge of a return, or begun in the middle, is not.
  const auto plays_all_of = [&](const BarRange& bars) {
    return std::all_of(sources.begin() + bars.first, sources.begin() + bars.last + 1,
                       [](bool is_played) { return is_played; });
  };
  for (const int chunk : standing_in(piece, played))
    if (!holds(named, chunk))
      indexed.violation(rule, Kind::chunk_not_named,
                        fmt::format("{} plays chunk {} but does not name it",
                                    in_words(indexed, moment), piece.chunks()[chunk].id));
  for (const int chunk : named)
    if (!plays_all_of(piece.chunks()[chunk].bars))
      indexed.violation(rule, Kind::chunk_not_played,
                        fmt::format("{} names chunk {}, which it does not play from end to end",
                                    in_words(indexed, moment), piece.chunks()[chunk].id));
  if (std::adjacent_find(named.begin(), named.end()) != named.end())
    indexed.violation(rule, Kind::chunk_named_twice,
                      in_words(indexed, moment) + " names a chunk twice");
}

void check_starts(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                  const Task& task) {
  const std::string what = in_words(indexed, moment);
  if (task.cues.empty() && task.throws == 0)
    return indexed.violation(7, Kind::no_start, what + " has neither a cue start nor a throw");
  for (const int number : task.cues)
    if (!piece.find_cue(number))
      indexed.violation(7, Kind::no_such_start,
                        fmt::format("{} assigns cue start {}, which does not exist", what, number));
  const std::vector<int> bars = bars_begun_from(indexed, moment);
  if (bars.empty()) return;  // the dice alone decide
  const auto [first, last] = std::minmax_element(bars.begin(), bars.end());
  if (task.bars.first != *first || task.bars.last < *last ||
      task.bars.last > *last + 2 * indexed.plan.method.chunk_most)
    indexed.violation(7, Kind::bars_not_of_starts,
                      fmt::format("{} does not go from its first cue start to its last", what));
}

void check_learned_before(IndexedPlan& indexed, const IndexedPiece& piece, const Moment& moment,
                          const Task& task, const std::vector<BarRange>& played, int rule) {
  const bool by_day = task.drill != Drill::join;
  Chunks needed;
  for (const BarRange& bars : played)
    for (const int chunk : piece.touched(bars)) needed.push_back(chunk);
  needed = sorted(std::move(needed));
  needed.erase(std::unique(needed.begin(), needed.end()), needed.end());
  for (const int chunk : needed) {
    const auto& learned = piece.learned[chunk];
    if (learned && (by_day ? learned->day < moment.day : *learned < moment)) continue;
    indexed.violation(
        rule, Kind::not_learned_before,
        fmt::format("{} needs chunk {} ({}), which is not learned {}", in_words(indexed, moment),
                    piece.chunks()[chunk].id, in_words(piece.chunks()[chunk].bars),
                    by_day ? "on an earlier day" : "before"));
  }
}

int rule_broken_by(Drill drill) {
  if (drill == Drill::join) return 4;
  if (drill == Drill::run_through) return 6;
  if (drill == Drill::silent_run) return 0;
  return is_retrieval(drill) ? 5 : 9;
}

}  // namespace

void check_covered(IndexedPlan& indexed) {
  indexed.each_planned([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::learn) return;
    const IndexedPiece& piece = indexed.pieces[task.piece];
    const int rule = rule_broken_by(task.drill);
    const std::vector<BarRange> played = surely_played(indexed, moment);
    if (task.drill == Drill::cue_starts) check_starts(indexed, piece, moment, task);
    check_names(indexed, piece, moment, task, played, rule);
    check_learned_before(indexed, piece, moment, task, played, rule);
  });
}

}  // namespace cahier
