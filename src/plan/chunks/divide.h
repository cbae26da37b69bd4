// Sections and chunks: where a piece is cut.
#pragma once

#include <functional>
#include <vector>

#include "plan/plan.h"
#include "practice/time_model.h"

namespace cahier {

// The piece's own sections; when it names none, stretches of at most sixteen bars in multiples of
// four where they can be, cut where key or meter change (a double bar there is common practice).
std::vector<Section> divide_into_sections(const Piece& piece);

// The section's phrases, cut at the bars that were learned already; `learned` by bar. What was
// learned at one time is one of them, and `whole` where it must not be cut: it is a chunk.
struct Uncut {
  BarRange bars;
  bool whole = false;
};
std::vector<Uncut> uncut_bars(const Section& section, const std::vector<BarRange>& learned,
                              const Method& method);

// Cuts every section that is not a return into chunks, phrase by phrase, by dynamic programming:
// sizes within the method's bounds unless the phrase is shorter, loads near `load` minutes, and
// cuts on every fourth bar of the phrase preferred. A pickup rides with the first chunk. What is
// learned already stays as it was learned.
std::vector<Chunk> divide_into_chunks(const Piece& piece, const std::vector<Section>& sections,
                                      const std::vector<BarRange>& learned, const Method& method,
                                      const TimeModel& time, double load);

// The bars of one phrase, cut.
using CutPhrase = std::function<std::vector<BarRange>(BarRange phrase)>;

// Names the chunks that every section that is not a return is cut into, phrase by phrase.
std::vector<Chunk> cut_into_chunks(const Piece& piece, const std::vector<Section>& sections,
                                   const std::vector<BarRange>& learned, const Method& method,
                                   const CutPhrase& cut);

// The section's phrases; where it names none, the whole section.
std::vector<BarRange> phrases_of(const Section& section);

}  // namespace cahier
