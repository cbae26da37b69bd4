// A fork and its ways on, in words.
#pragma once

#include <string>
#include <vector>

#include "plan/plan.h"
#include "text/words.h"

namespace cahier {

// Whether its ways leave from one bar, at different times: a repeat's, or endings.
bool jumps(const Fork& fork);

// "16 → 1"
std::string way_words(const Words& words, int at, int to);

// Of repeats and endings: "first time: back to 1", "first time: 15–16, then back to 1", "second
// time: on to 17".
std::string time_words(const Words& words, const Piece& piece, const Fork& fork, const WayOn& way);

// All places and where they part, to stand on a line with dots between: "bars 9–16 and 41–48",
// "4 bars alike", "they part in bars 13 and 45"; of a repeat "up to bar 16", "first time: back to
// 1", ….
std::vector<std::string> place_words(const Words& words, const Piece& piece, const Fork& fork,
                                     int bars_alike);

// "right hand: F♯ instead of F"; of a piece with one part without its name. Empty where the bars
// are the same.
std::string difference_words(const Words& words, const Piece& piece, const Parting& parting);

// What a score tells of a way beside the first: "Bar 45, beat 2: right hand: F♯ instead of F."
// Empty where it tells nothing.
std::string parting_text(const Words& words, const Piece& piece, const Fork& fork,
                         const WayOn& way);
// One for each way of which there is something to tell.
std::vector<std::string> parting_words(const Words& words, const Piece& piece, const Fork& fork);

// The same of all forks that a fork drill plays.
std::vector<std::string> parting_words(const Words& words, const PlannedPiece& piece,
                                       const Task& task);

}  // namespace cahier
