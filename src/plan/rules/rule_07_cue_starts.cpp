// Rule 7: where the cue starts are, and that the dice are fair.
#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <string>
#include <vector>

#include "plan/rules/indexed_plan.h"

namespace cahier {
namespace {

// A section longer than this needs a cue start inside it (bars, a pickup not counted).
constexpr int kLongSection = 16;
// More ordered outcomes than this are no table for a printed page.
constexpr long kMostOutcomes = 1296;

void check_numbers(Judgement& judgement, const JudgedPiece& judged) {
  const auto& cues = judged.planned->cues;
  for (std::size_t at = 0; at < cues.size(); ++at) {
    if (cues[at].number != static_cast<int>(at) + 1)
      judgement.breach(7, fmt::format("cue start {} has the number {}", at + 1, cues[at].number));
    if (at > 0 && cues[at].bar <= cues[at - 1].bar)
      judgement.breach(7, fmt::format("cue start {} is not after the one before", cues[at].number));
    const int chunk = judged.chunk_at[cues[at].bar];
    if (chunk >= 0 && judged.chunks()[chunk].raised != (cues[at].weight > 1))
      judgement.breach(
          7, fmt::format("the share of cue start {} does not go by its slips", cues[at].number));
    if (cues[at].section != judged.section_at[cues[at].bar])
      judgement.breach(7, fmt::format("cue start {} is put in a wrong section", cues[at].number));
  }
}

void check_places(Judgement& judgement, const JudgedPiece& judged) {
  std::vector<int> bars;
  for (const CueStart& cue : judged.planned->cues) bars.push_back(cue.bar);
  std::sort(bars.begin(), bars.end());
  const auto is_cue = [&](int bar) { return std::binary_search(bars.begin(), bars.end(), bar); };
  for (const PlannedSection& section : judged.planned->sections) {
    if (!is_cue(section.bars.first))
      judgement.breach(7, fmt::format("section \"{}\" begins at bar {} without a cue start",
                                      section.name, section.bars.first));
    const auto inside = std::upper_bound(bars.begin(), bars.end(), section.bars.first);
    const int size = section.bars.size() - (section.bars.first == 0 ? 1 : 0);
    if (size > kLongSection && (inside == bars.end() || *inside > section.bars.last))
      judgement.breach(
          7, fmt::format("section \"{}\" has {} bars and no cue start inside", section.name, size));
  }
  for (const int bar : judged.planned->piece.cues)
    if (!is_cue(bar))
      judgement.breach(7, fmt::format("bar {} is asked for as a cue start and is none", bar));
}

// Each cue start's outcomes are its weight times one share, the largest that leaves room for all.
std::string fault_of(const DiceTable& table, const JudgedPiece& judged) {
  long total = 1;
  if (table.faces < 2 || table.count < 1) return "has no dice";
  for (int die = 0; die < table.count; ++die)
    if ((total *= table.faces) > kMostOutcomes) return "has too many outcomes";
  long weights = 0;
  for (const auto& row : table.rows) {
    const CueStart* cue = judged.find_cue(row.cue);
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
    const long due = total / weights * judged.find_cue(row.cue)->weight;
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

void check_dice(Judgement& judgement, const JudgedPiece& judged) {
  std::vector<int> thrown;
  for (const DiceTable& table : judged.planned->dice) {
    for (const auto& row : table.rows) thrown.push_back(row.cue);
    const std::string fault = fault_of(table, judged);
    if (!fault.empty()) judgement.breach(7, "the dice table " + fault);
  }
  std::vector<int> numbers;
  for (const CueStart& cue : judged.planned->cues) numbers.push_back(cue.number);
  if (thrown != numbers)
    judgement.breach(7, "the dice tables do not hold each cue start once, in order");
}

}  // namespace

void check_cues(Judgement& judgement) {
  for (const JudgedPiece& judged : judgement.pieces) {
    check_numbers(judgement, judged);
    check_places(judgement, judged);
    check_dice(judgement, judged);
  }
}

}  // namespace cahier
