#include "plan/phrase_map.h"

#include <cstdlib>

namespace cahier {

PhraseMap::PhraseMap(const PlannedPiece& planned) {
  const Piece& piece = planned.piece;
  const auto size = static_cast<std::size_t>(piece.bars) + 1;
  std::vector<bool> own(size, false);  // in a section that names its phrases
  begins_.assign(size, false);
  for (const Section& section : piece.sections)
    for (const BarRange& phrase : section.phrases) {
      begins_[phrase.first] = true;
      for (int bar = phrase.first; bar <= phrase.last; ++bar) own[bar] = true;
    }
  known_ = own;
  const std::vector<bool> named = begins_;
  for (const PlannedSection& section : planned.sections) {
    for (int bar = section.bars.first; section.same_as && bar <= section.bars.last; ++bar) {
      const int source = piece.learned_bar(bar);
      if (own[bar] || !own[source]) continue;
      known_[bar] = true;
      begins_[bar] = named[source];
    }
    begins_[section.bars.first] = known_[section.bars.first] = true;
  }
  phrase_at_.assign(size, 0);
  for (int bar = piece.first_bar() + 1; bar <= piece.bars; ++bar)
    phrase_at_[bar] = phrase_at_[bar - 1] + (begins_[bar] ? 1 : 0);
  if (piece.first_bar() == 0 && piece.bars >= 1) begins_[1] = known_[1] = true;
}

int PhraseMap::nearest_start(int bar, BarRange section) const {
  int nearest = section.first;
  for (int start = section.first; start <= section.last; ++start)
    if (begins_[start] && std::abs(start - bar) < std::abs(nearest - bar)) nearest = start;
  return nearest;
}

}  // namespace cahier
