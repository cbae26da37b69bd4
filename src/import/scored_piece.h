// A piece file that names a score: what the file does not say comes from the score.
#pragma once

#include <optional>
#include <string>

#include "piece/piece.h"
#include "text/diagnostics.h"
#include "text/source.h"
#include "text/words.h"

namespace cahier {

struct ScoredPiece {
  std::optional<Piece> piece;  // nullopt exactly when there was an error
  std::string score;           // the path that is read; empty where the file names none
};

// Reads a piece. Under `score` stands a path from the file's own folder, or a map of `file`, `part`
// as for cahier import, and `names`: letters, german or solfege, for notes that are spoken. Any key
// of the file replaces the score's, with those that belong to it: a tempo its beat, an instrument
// its parts and staves, repeats their endings. A number of bars that is not the score's is an
// error. What is wrong in the score, and what it leaves open, is reported at the line that names
// it. Where `words` are given, how its bars begin and what is said of them is told in these, and
// how the ways on at its forks part is added.
ScoredPiece read_scored_piece(const Source& source, const Words* words, Diagnostics& diagnostics);

}  // namespace cahier
