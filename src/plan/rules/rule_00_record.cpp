// What the plan says of the time before it is what the record tells: what was done, and which
// chunks that makes weak.
#include <fmt/format.h>

#include <algorithm>
#include <compare>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"
#include "plan/rules/surely_played.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

// One drill, done once. Of cue starts the bars begun from say all.
struct Fact {
  Date date;
  int piece = 0;
  Drill drill = Drill::recall;
  BarRange bars;
  std::vector<int> starts;
  auto operator<=>(const Fact&) const = default;
};

// The chunks whose bars lie in a stretch where they are learned, or where all of them come back.
std::vector<BarRange> chunks_within(const IndexedPiece& piece, const BarRange& bars) {
  std::vector<bool> within(piece.chunks().size(), false);
  for (std::size_t chunk = 0; chunk < within.size(); ++chunk)
    within[chunk] = bars.contains(piece.chunks()[chunk].bars);
  for (const Occurrence& occurrence : piece.occurrences)
    if (occurrence.whole && bars.contains(occurrence.bars)) within[occurrence.chunk] = true;
  std::vector<BarRange> chunks;
  for (std::size_t chunk = 0; chunk < within.size(); ++chunk)
    if (within[chunk]) chunks.push_back(piece.chunks()[chunk].bars);
  return chunks;
}

std::vector<Fact> told_by_record(const IndexedPlan& indexed) {
  std::vector<Fact> facts;
  for (const Done& done : indexed.plan.record.done) {
    if (done.date >= indexed.plan.from) continue;
    const IndexedPiece& piece = indexed.pieces[done.piece];
    switch (done.drill) {
      case Drill::learn:
      case Drill::spoken_part:
      case Drill::write_out:
        for (const BarRange& bars : chunks_within(piece, done.bars))
          facts.push_back({done.date, done.piece, done.drill, bars, {}});
        break;
      case Drill::cue_starts: {
        std::vector<int> starts = done.starts;
        starts.insert(starts.end(), done.hit.begin(), done.hit.end());
        starts.insert(starts.end(), done.missed.begin(), done.missed.end());
        std::sort(starts.begin(), starts.end());
        starts.erase(std::unique(starts.begin(), starts.end()), starts.end());
        facts.push_back({done.date, done.piece, done.drill, {}, std::move(starts)});
        break;
      }
      case Drill::run_through:
        facts.push_back({done.date, done.piece, done.drill, piece.planned->piece.whole(), {}});
        break;
      case Drill::join:
      case Drill::recall:
      case Drill::slow_pass:
      case Drill::counted_pass:
      case Drill::silent_run:
        facts.push_back({done.date, done.piece, done.drill, done.bars, {}});
        break;
    }
  }
  std::sort(facts.begin(), facts.end());
  return facts;
}

std::vector<Fact> taken_for_done(const IndexedPlan& indexed) {
  std::vector<Fact> facts;
  indexed.each_task([&](const Moment& moment, const Task& task) {
    if (!indexed.is_past(moment)) return;
    Fact fact{indexed.days[moment.day]->date, task.piece, task.drill, task.bars, {}};
    if (task.drill == Drill::cue_starts) {
      fact.bars = {};
      fact.starts = bars_begun_from(indexed, moment);
      std::sort(fact.starts.begin(), fact.starts.end());
    }
    facts.push_back(std::move(fact));
  });
  std::sort(facts.begin(), facts.end());
  return facts;
}

}  // namespace

void check_past(IndexedPlan& indexed) {
  const std::vector<Fact> told = told_by_record(indexed);
  const std::vector<Fact> taken = taken_for_done(indexed);
  const auto [here, there] = std::mismatch(told.begin(), told.end(), taken.begin(), taken.end());
  if (here == told.end() && there == taken.end()) return;
  const bool missing = there == taken.end() || (here != told.end() && *here < *there);
  const Fact& fact = missing ? *here : *there;
  indexed.violation(
      0, Kind::past_not_of_record,
      fmt::format("a {} of {}, {}, {}", drill_word(fact.drill), iso(fact.date),
                  fact.drill == Drill::cue_starts ? "from its starts" : in_words(fact.bars),
                  missing ? "is told by the record but not counted as done"
                          : "is counted as done, yet the record does not tell it"));
}

void check_weakness(IndexedPlan& indexed) {
  const auto differs = [](const Chunk& chunk, const Weakness& weak) {
    return chunk.level != weak.level || chunk.raised != weak.raised ||
           chunk.slips.slips != weak.slips.slips || chunk.slips.trials != weak.slips.trials ||
           chunk.last_slip != weak.last_slip;
  };
  for (const IndexedPiece& piece : indexed.pieces)
    for (std::size_t at = 0; at < piece.chunks().size(); ++at) {
      const Chunk& chunk = piece.chunks()[at];
      const Weakness& weak = piece.weakness[at];
      if (!differs(chunk, weak)) continue;
      indexed.violation(
          0, Kind::weakness_not_of_record,
          fmt::format("chunk {} is said to be of level {} ({}, {} slips in {}); the record makes "
                      "it level {} ({}, {} slips in {})",
                      chunk.id, chunk.level, chunk.raised ? "raised" : "not raised",
                      chunk.slips.slips, chunk.slips.trials, weak.level,
                      weak.raised ? "raised" : "not raised", weak.slips.slips, weak.slips.trials));
    }
}

}  // namespace cahier
