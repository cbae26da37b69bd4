#include "plan/rules/index_pieces.h"

#include <fmt/format.h>

#include <algorithm>
#include <utility>

#include "plan/rules/surely_played.h"
#include "plan/rules/weak_chunks.h"

namespace cahier {
namespace {

using Kind = Violation::Kind;

void index_bars(IndexedPiece& piece) {
  const PlannedPiece& planned = *piece.planned;
  const BarRange whole = planned.piece.whole();
  const std::size_t size = static_cast<std::size_t>(whole.last) + 1;
  piece.learned_bar = planned.piece.learned_bars();
  piece.section_at.assign(size, -1);
  piece.chunk_at.assign(size, -1);
  piece.occurrence_at.assign(size, -1);
  for (std::size_t section = 0; section < planned.sections.size(); ++section)
    for (int bar = planned.sections[section].bars.first; bar <= planned.sections[section].bars.last;
         ++bar)
      piece.section_at[bar] = static_cast<int>(section);

  std::vector<int> holder(size, -1);
  for (std::size_t chunk = 0; chunk < planned.chunks.size(); ++chunk)
    for (int bar = planned.chunks[chunk].bars.first; bar <= planned.chunks[chunk].bars.last; ++bar)
      holder[bar] = static_cast<int>(chunk);
  for (int bar = whole.first; bar <= whole.last; ++bar)
    piece.chunk_at[bar] = holder[piece.learned_bar[bar]];
}

void index_occurrences(IndexedPiece& piece) {
  const BarRange whole = piece.planned->piece.whole();
  for (int bar = whole.first; bar <= whole.last; ++bar) {
    const bool goes_on = bar > whole.first && piece.chunk_at[bar] == piece.chunk_at[bar - 1] &&
                         piece.learned_bar[bar] == piece.learned_bar[bar - 1] + 1;
    if (goes_on)
      piece.occurrences.back().bars.last = bar;
    else
      piece.occurrences.push_back({{bar, bar}, piece.chunk_at[bar], false});
    piece.occurrence_at[bar] = static_cast<int>(piece.occurrences.size()) - 1;
  }
  for (auto& occurrence : piece.occurrences)
    occurrence.whole = occurrence.chunk >= 0 &&
                       occurrence.bars.size() == piece.chunks()[occurrence.chunk].bars.size();
}

// Played from memory on a day; it is a recall of what was learned on an earlier one.
void recall(IndexedPiece& piece, const BarRange& bars, int day) {
  for (int bar = bars.first; bar <= bars.last; ++bar) {
    const int chunk = piece.chunk_at[bar];
    if (chunk < 0 || !piece.learned[chunk] || piece.learned[chunk]->day >= day) continue;
    std::vector<int>& days = piece.recalled[piece.learned_bar[bar]];
    if (days.empty() || days.back() != day) days.push_back(day);
  }
}

void check_sections(IndexedPlan& indexed, const IndexedPiece& piece) {
  const PlannedPiece& planned = *piece.planned;
  for (const Section& section : planned.piece.sections) {
    const int at = piece.section_at[section.bars.first];
    if (at >= 0 && planned.sections[at].bars.first != section.bars.first)
      indexed.violation(1, Kind::sections_not_of_piece,
                        fmt::format("section \"{}\" begins at bar {} in the piece but not in "
                                    "the plan",
                                    section.name, section.bars.first));
  }
  for (const PlannedSection& section : planned.sections)
    for (int bar = section.bars.first; bar <= section.bars.last; ++bar) {
      const int source = section.same_as
                             ? piece.learned_bar[section.same_as->first + bar - section.bars.first]
                             : bar;
      if (piece.learned_bar[bar] == source) continue;
      indexed.violation(1, Kind::return_not_of_piece,
                        fmt::format("the plan and the piece do not agree where the notes of bar "
                                    "{} are learned",
                                    bar));
      break;
    }
}

}  // namespace

void index_pieces(IndexedPlan& indexed) {
  for (const PlannedPiece& planned : indexed.plan.pieces) {
    IndexedPiece piece;
    piece.planned = &planned;
    piece.index = static_cast<int>(indexed.pieces.size());
    index_bars(piece);
    index_occurrences(piece);
    index_forks(piece);
    piece.learned.resize(piece.chunks().size());
    piece.recalled.resize(piece.learned_bar.size());
    piece.weakness = weak_chunks(indexed.plan, piece.index);
    check_sections(indexed, piece);
    indexed.pieces.push_back(std::move(piece));
  }
  indexed.each_task([&](const Moment& moment, const Task& task) {
    IndexedPiece& piece = indexed.pieces[task.piece];
    if (task.drill == Drill::learn)
      for (const int chunk : task.chunks)
        if (!piece.learned[chunk]) piece.learned[chunk] = moment;
    if (is_retrieval(task.drill))
      for (const BarRange& bars : surely_played(indexed, moment)) recall(piece, bars, moment.day);
  });
}

}  // namespace cahier
