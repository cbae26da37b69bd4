// Rules 1 and 2: how the piece is cut, and that each chunk is learned once, parts apart first.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

// The stretches that a chunk must not leave: sections, cut where a phrase begins, and around what
// was learned before the plan.
std::vector<BarRange> phrases_of(const IndexedPlan& indexed, const IndexedPiece& piece) {
  const PlannedPiece& planned = *piece.planned;
  std::vector<char> begins(static_cast<std::size_t>(planned.piece.bars) + 2, 0);
  const BarRange whole = planned.piece.whole();
  const auto mark = [&](int bar) {
    if (whole.contains(bar)) begins[bar] = 1;
  };
  for (const auto& section : planned.sections) mark(section.bars.first);
  for (const auto& section : planned.piece.sections) {
    mark(section.bars.first);
    for (const auto& phrase : section.phrases) mark(phrase.first);
  }
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (!indexed.is_past(moment) || task.piece != piece.index || task.drill != Drill::learn) return;
    mark(task.bars.first);
    mark(task.bars.last + 1);
  });
  std::vector<BarRange> phrases;
  for (int bar = whole.first; bar <= whole.last; ++bar) {
    if (phrases.empty() || begins[bar]) phrases.push_back({bar, bar});
    phrases.back().last = bar;
  }
  return phrases;
}

// Bars that count towards a size: a pickup rides along.
int counted(const BarRange& bars) { return bars.size() - (bars.first == 0 ? 1 : 0); }

// Whether so many bars can be cut into chunks within the method's bounds at all; a pickup that is a
// phrase of its own has none.
bool can_be_cut(int bars, const Method& method) {
  const int fewest = (bars + method.chunk_most - 1) / method.chunk_most;
  return bars > 0 && fewest * method.chunk_least <= bars;
}

void check_sizes(IndexedPlan& indexed, const IndexedPiece& piece) {
  const PlannedPiece& planned = *piece.planned;
  const Method& method = indexed.plan.method;
  const std::vector<BarRange> phrases = phrases_of(indexed, piece);
  for (const Chunk& chunk : planned.chunks) {
    const auto after =
        std::upper_bound(phrases.begin(), phrases.end(), chunk.bars.first,
                         [](int bar, const BarRange& phrase) { return bar < phrase.first; });
    const BarRange& phrase = *(after - 1);
    if (!phrase.contains(chunk.bars)) {
      indexed.violation(1, Kind::crosses_a_phrase,
                        fmt::format("chunk {} ({}) crosses the start of a section or phrase at "
                                    "bar {}",
                                    chunk.id, in_words(chunk.bars), phrase.last + 1));
      continue;
    }
    const int size = counted(chunk.bars);
    const bool too_short = size < method.chunk_least && can_be_cut(counted(phrase), method);
    if (too_short || size > method.chunk_most)
      indexed.violation(
          1, Kind::chunk_size,
          fmt::format("chunk {} ({}) has {} bars; {} to {} are allowed", chunk.id,
                      in_words(chunk.bars), size, method.chunk_least, method.chunk_most));
  }
}

void check_each_bar_once(IndexedPlan& indexed, const IndexedPiece& piece) {
  const PlannedPiece& planned = *piece.planned;
  const BarRange whole = planned.piece.whole();
  std::vector<int> holders(static_cast<std::size_t>(whole.last) + 1, 0);
  for (const Chunk& chunk : planned.chunks)
    for (int bar = chunk.bars.first; bar <= chunk.bars.last; ++bar) ++holders[bar];
  for (int bar = whole.first; bar <= whole.last; ++bar) {
    const int wanted = piece.learned_bar[bar] == bar ? 1 : 0;
    if (holders[bar] != wanted)
      indexed.violation(
          1, Kind::bar_not_in_one_chunk,
          fmt::format("bar {} lies in {} chunks instead of {}", bar, holders[bar], wanted));
  }
}

std::vector<std::string> sorted(std::vector<std::string> parts) {
  std::sort(parts.begin(), parts.end());
  return parts;
}

// Every part alone, then all together.
bool parts_apart_then_together(const Task& task, const std::vector<std::string>& parts) {
  std::vector<std::string> alone;
  if (task.steps.empty()) return false;
  for (std::size_t step = 0; step + 1 < task.steps.size(); ++step) {
    if (task.steps[step].parts.size() != 1) return false;
    alone.push_back(task.steps[step].parts[0]);
  }
  const bool each_alone = parts.size() == 1 ? alone.empty() : sorted(alone) == sorted(parts);
  return each_alone && sorted(task.steps.back().parts) == sorted(parts);
}

void check_learn_task(IndexedPlan& indexed, const Moment& moment, const Task& task) {
  const IndexedPiece& piece = indexed.pieces[task.piece];
  const std::string what = in_words(indexed, moment);
  if (task.chunks.size() != 1)
    return indexed.violation(2, Kind::not_one_chunk, what + " does not hold one chunk");
  const int chunk = task.chunks[0];
  if (task.bars != piece.chunks()[chunk].bars)
    indexed.violation(
        2, Kind::not_one_chunk,
        fmt::format("{} has not the bars of chunk {}", what, piece.chunks()[chunk].id));
  if (piece.learned[chunk] != moment)
    indexed.violation(2, Kind::learned_again,
                      fmt::format("{} learns chunk {} again", what, piece.chunks()[chunk].id));
  if (!parts_apart_then_together(task, piece.planned->piece.parts()))
    indexed.violation(2, Kind::parts_not_apart_then_together,
                      what + " is not every part alone, then all together");
  for (const Step& step : task.steps)
    if (step.times != indexed.plan.method.repetitions)
      indexed.violation(2, Kind::repetitions,
                        fmt::format("{} repeats a step {} times instead of {}", what, step.times,
                                    indexed.plan.method.repetitions));
}

bool said_to_be_unplaced(const Plan& plan, int piece, const BarRange& bars) {
  return std::any_of(plan.unplaced.begin(), plan.unplaced.end(), [&](const Unplaced& work) {
    return work.piece == piece && work.drill == Drill::learn && work.bars.contains(bars);
  });
}

}  // namespace

void check_chunks(IndexedPlan& indexed) {
  for (const IndexedPiece& piece : indexed.pieces) {
    check_each_bar_once(indexed, piece);
    check_sizes(indexed, piece);
    std::set<std::string> ids;
    for (const Chunk& chunk : piece.chunks())
      if (!ids.insert(chunk.id).second)
        indexed.violation(1, Kind::chunk_name, fmt::format("two chunks are called {}", chunk.id));
  }
}

void check_learning(IndexedPlan& indexed) {
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (task.drill == Drill::learn) check_learn_task(indexed, moment, task);
  });
  for (const IndexedPiece& piece : indexed.pieces)
    for (std::size_t chunk = 0; chunk < piece.chunks().size(); ++chunk) {
      const Chunk& missing = piece.chunks()[chunk];
      if (!piece.learned[chunk] && !said_to_be_unplaced(indexed.plan, piece.index, missing.bars))
        indexed.violation(
            2, Kind::never_learned,
            fmt::format("chunk {} ({}) is never learned", missing.id, in_words(missing.bars)));
    }
}

}  // namespace cahier
