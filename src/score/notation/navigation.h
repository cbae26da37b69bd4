// Repeats, endings and jumps as they are written, whichever part they stand in.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/notation/score_parts.h"
#include "score/notation/score_warnings.h"

namespace cahier {

struct ScoreJump {
  bool to_start = true;  // D.C.; else D.S.
  std::string segno;     // the name of the sign that a D.S. goes back to; may be empty
  std::string words;     // as printed; may be empty
};

// What stands at one measure element.
struct MeasureSigns {
  bool forward = false;   // a repeat begins with it
  bool backward = false;  // a repeat ends with it
  int times = 0;          // passes of that repeat; 0 where the score does not say
  std::optional<std::vector<int>> ending_starts;  // an ending begins, for these passes
  bool ending_stops = false;
  std::vector<std::string> segnos;  // names of the signs here, one of which may be empty
  std::vector<std::string> codas;
  std::optional<ScoreJump> jump;
  std::optional<std::string> to_coda;  // the name of the coda to go on with
  bool fine = false;
  std::string rehearsal;    // the mark here, "B"; may be empty
  bool double_bar = false;  // a double bar line ends it
};

// One for each measure element: the union of all parts, since a sign may stand in one of them only.
// Words ("D.S. al Fine") count where the score has no sound element for them, with a warning.
// Throws InputError for a repeat of no pass or of more than kMostPasses.
std::vector<MeasureSigns> read_navigation(const std::vector<WrittenPart>& parts,
                                          ScoreWarnings& warnings);

}  // namespace cahier
