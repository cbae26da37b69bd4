#include "chunkings.h"

#include <algorithm>

#include "plan/chunks/divide.h"

namespace cahier::brute {
namespace {

using Cut = std::vector<BarRange>;

// A phrase too short for any chunk within the bounds is a chunk as it is.
std::vector<Cut> cuts_of(BarRange phrase, const Method& method) {
  const int pickup = phrase.first == 0 ? 1 : 0;
  const int bars = phrase.size() - pickup;
  if (bars < method.chunk_least) return {{phrase}};
  std::vector<Cut> all;
  for (int size = method.chunk_least; size <= std::min(bars, method.chunk_most); ++size) {
    const BarRange chunk{phrase.first, phrase.first + pickup + size - 1};
    if (size == bars) {
      all.push_back({chunk});
      continue;
    }
    const BarRange rest{chunk.last + 1, phrase.last};
    if (rest.size() < method.chunk_least) continue;
    for (const Cut& cut : cuts_of(rest, method)) {
      all.push_back({chunk});
      all.back().insert(all.back().end(), cut.begin(), cut.end());
    }
  }
  return all;
}

}  // namespace

std::vector<Piece> chunkings(const Piece& piece, const Method& method) {
  Piece begun = piece;
  begun.sections = divide_into_sections(piece);
  std::vector<Piece> all = {begun};
  for (std::size_t at = 0; at < begun.sections.size(); ++at) {
    const Section& section = begun.sections[at];
    if (section.same_as) continue;
    std::vector<Cut> cuts = {{}};
    for (const BarRange& phrase :
         section.phrases.empty() ? std::vector<BarRange>{section.bars} : section.phrases) {
      std::vector<Cut> longer;
      for (const Cut& cut : cuts)
        for (const Cut& more : cuts_of(phrase, method)) {
          longer.push_back(cut);
          longer.back().insert(longer.back().end(), more.begin(), more.end());
        }
      cuts = std::move(longer);
    }
    std::vector<Piece> next;
    for (const Piece& one : all)
      for (const Cut& cut : cuts) {
        next.push_back(one);
        next.back().sections[at].phrases = cut;
      }
    all = std::move(next);
  }
  return all;
}

}  // namespace cahier::brute
