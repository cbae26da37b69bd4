// The first notes at a bar, as short as they fit on a card.
#pragma once

#include <string>
#include <vector>

#include "score/score.h"
#include "text/words.h"

namespace cahier {

inline constexpr std::size_t kMostBeginningNames = 4;  // of a hand
inline constexpr int kBeginningBeats = 2;

struct HandBeginning {
  int hand = 0;                    // index in score.hands
  std::vector<std::string> names;  // "E♭5", "D", "C": at least one, kMostBeginningNames at most
  std::vector<std::string> aloud;  // the same as it is read aloud: "E flat 5", "D", "C minor"
  std::string sung{};              // the words there; see sung_words
};

// What each hand plays in the first two beats of the bar with that index, beats as its meter is
// commonly counted, or in the bar where it is shorter; a hand that rests there is left out. The
// octave, 4 from middle C, stands with the first name only. Of a chord the bottom and the top note
// are named, "A♭2–C3"; what is tied from before is said to be held; grace notes are left out, and
// so are notes without pitch.
std::vector<HandBeginning> how_it_begins(const Score& score, int bar, const Words& words);

// On one line: "R: E♭5 D C · L: A♭2"; a hand that is neither right nor left by its name, and of a
// score with one hand only the notes. What is sung stands after them: "G4 A “le soleil”". Empty
// where all hands rest.
std::string beginning_text(const Score& score, const std::vector<HandBeginning>& hands,
                           const Words& words);

// The same to be read aloud, one line for each hand: "right hand: E flat 5; D; C". Chords are named
// whole.
std::vector<std::string> beginning_aloud(const Score& score,
                                         const std::vector<HandBeginning>& hands,
                                         const Words& words);

}  // namespace cahier
