// The words under the first notes at a bar.
#pragma once

#include <string>

#include "score/score.h"

namespace cahier {

inline constexpr std::size_t kMostSungCharacters = 24;

// What is sung to the notes of a hand in the first `until` quarters of the bar with that index:
// syllables of one word joined, the last word whole even where it goes on in later bars, and the
// end of a word that began before with its hyphen: "-leil couchant". Of several verses the first
// that is written there. Whole words, up to kMostSungCharacters; empty where nothing is sung.
std::string sung_words(const Score& score, int hand, int bar, double until);

}  // namespace cahier
