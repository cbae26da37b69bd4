// Rule 7: where the cue starts are, and that the dice are fair.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "plan/rules/each_rule.h"
#include "plan/rules/weak_chunks.h"
#include "practice/numbers.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

// More ordered outcomes than this are no table for a printed page.
constexpr long kMostOutcomes = 1296;

// What earlier workbooks numbered keeps its numbers; new starts stand after it, in bar order.
void check_numbers_stay(IndexedPlan& indexed, const IndexedPiece& piece) {
  const auto& cues = piece.planned->cues;
  NumberedStarts numbered;
  if (piece.index < static_cast<int>(indexed.plan.record.starts.size()))
    numbered = indexed.plan.record.starts[piece.index];
  for (std::size_t at = 0; at < numbered.bars.size(); ++at)
    if (at >= cues.size() || cues[at].bar != numbered.bars[at])
      indexed.violation(
          7, Kind::start_renumbered,
          fmt::format("cue start {} was at bar {} and no longer is", at + 1, numbered.bars[at]));
  for (std::size_t at = 0; at < cues.size(); ++at) {
    const int number = static_cast<int>(at) + 1;
    if (cues[at].is_new != (numbered.before > 0 && number > numbered.before))
      indexed.violation(
          7, Kind::start_renumbered,
          fmt::format("cue start {} is {}called new", number, cues[at].is_new ? "" : "not "));
    if (at > numbered.bars.size() && cues[at].bar <= cues[at - 1].bar)
      indexed.violation(7, Kind::start_order,
                        fmt::format("cue start {} is not after the one before", number));
  }
  const std::vector<CueStart> by_bar = piece.planned->cues_by_bar();
  for (std::size_t at = 1; at < by_bar.size(); ++at)
    if (by_bar[at].bar == by_bar[at - 1].bar)
      indexed.violation(7, Kind::start_order,
                        fmt::format("bar {} has two cue starts", by_bar[at].bar));
}

void check_numbers(IndexedPlan& indexed, const IndexedPiece& piece) {
  const auto& cues = piece.planned->cues;
  for (std::size_t at = 0; at < cues.size(); ++at) {
    if (cues[at].number != static_cast<int>(at) + 1)
      indexed.violation(7, Kind::start_number,
                        fmt::format("cue start {} has the number {}", at + 1, cues[at].number));
    const int chunk = piece.chunk_at[cues[at].bar];
    const int share = chunk >= 0 && piece.weakness[chunk].raised ? numbers::kWeakFaces : 1;
    if (cues[at].weight != share)
      indexed.violation(
          7, Kind::start_share,
          fmt::format("the share of cue start {} does not go by its slips", cues[at].number));
    if (cues[at].section != piece.section_at[cues[at].bar])
      indexed.violation(7, Kind::start_section,
                        fmt::format("cue start {} is put in a wrong section", cues[at].number));
  }
}

void check_places(IndexedPlan& indexed, const IndexedPiece& piece) {
  std::vector<int> bars;
  for (const CueStart& cue : piece.planned->cues) bars.push_back(cue.bar);
  std::sort(bars.begin(), bars.end());
  const auto is_cue = [&](int bar) { return std::binary_search(bars.begin(), bars.end(), bar); };
  for (const PlannedSection& section : piece.planned->sections) {
    if (!is_cue(section.bars.first))
      indexed.violation(7, Kind::section_without_start,
                        fmt::format("section \"{}\" begins at bar {} without a cue start",
                                    section.name, section.bars.first));
    const auto inside = std::upper_bound(bars.begin(), bars.end(), section.bars.first);
    const int size = section.bars.size() - (section.bars.first == 0 ? 1 : 0);
    if (size > numbers::kNeedsInnerStart && (inside == bars.end() || *inside > section.bars.last))
      indexed.violation(
          7, Kind::long_section_without_start,
          fmt::format("section \"{}\" has {} bars and no cue start inside", section.name, size));
  }
  for (const int bar : piece.planned->piece.cues)
    if (!is_cue(bar))
      indexed.violation(7, Kind::wish_without_start,
                        fmt::format("bar {} is asked for as a cue start and is none", bar));
}

// Each cue start's outcomes are its weight times one share, the largest that leaves room for all.
std::string fault_of(const DiceTable& table, const IndexedPiece& piece) {
  long total = 1;
  if (table.faces < 2 || table.count < 1) return "has no dice";
  for (int die = 0; die < table.count; ++die)
    if ((total *= table.faces) > kMostOutcomes) return "has too many outcomes";
  long weights = 0;
  for (const auto& row : table.rows) {
    const CueStart* cue = piece.find_cue(row.cue);
    if (cue == nullptr || cue->weight < 1) return fmt::format("has a cue start {}", row.cue);
    weights += cue->weight;
  }
  if (weights < 1 || weights > total) return fmt::format("has {} cue starts", table.rows.size());

  std::set<std::vector<int>> seen;
  const auto add = [&](const std::vector<std::vector<int>>& outcomes) {
    return std::all_of(outcomes.begin(), outcomes.end(), [&](const std::vector<int>& outcome) {
      return static_cast<int>(outcome.size()) == table.count &&
             std::all_of(outcome.begin(), outcome.end(),
                         [&](int face) { return 1 <= face && face <= table.faces; }) &&
             seen.insert(outcome).second;
    });
  };
  for (const auto& row : table.rows) {
    const long due = total / weights * piece.find_cue(row.cue)->weight;
    if (static_cast<long>(row.outcomes.size()) != due)
      return fmt::format("gives cue start {} {} outcomes of {}, not {}", row.cue,
                         row.outcomes.size(), total, due);
    if (!add(row.outcomes))
      return fmt::format("has an impossible or doubled outcome for cue start {}", row.cue);
  }
  if (!add(table.again)) return "has an impossible or doubled outcome among those thrown again";
  if (static_cast<long>(seen.size()) != total)
    return fmt::format("has {} outcomes of {}", seen.size(), total);
  return {};
}

void check_dice(IndexedPlan& indexed, const IndexedPiece& piece) {
  // In bar order, each table by number.
  std::vector<CueStart> thrown = piece.planned->cues_by_bar();
  auto next = thrown.begin();
  bool sound = true;
  for (const DiceTable& table : piece.planned->dice) {
    const std::string fault = fault_of(table, piece);
    if (!fault.empty()) indexed.violation(7, Kind::dice_unfair, "the dice table " + fault);
    const std::ptrdiff_t rows = std::ssize(table.rows);
    if (!sound || !(sound = rows <= thrown.end() - next)) continue;
    std::sort(next, next + rows,
              [](const CueStart& a, const CueStart& b) { return a.number < b.number; });
    for (const auto& row : table.rows) sound = sound && row.cue == (next++)->number;
  }
  if (!sound || next != thrown.end())
    indexed.violation(7, Kind::dice_not_of_starts,
                      "the dice tables do not hold each cue start once, each a stretch in order");
}

}  // namespace

void check_cues(IndexedPlan& indexed) {
  for (const IndexedPiece& piece : indexed.pieces) {
    check_numbers(indexed, piece);
    check_numbers_stay(indexed, piece);
    check_places(indexed, piece);
    check_dice(indexed, piece);
  }
}

}  // namespace cahier
