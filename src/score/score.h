// A score as far as it concerns the player: bars, what each hand plays, and the order of playing.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "score/notation/lyrics.h"
#include "score/notation/measure_attributes.h"
#include "score/notation/navigation.h"
#include "score/notation/score_note.h"
#include "score/notation/score_tempo.h"
#include "score/notation/score_warnings.h"
#include "score/part_choice.h"
#include "score/play_order.h"

namespace cahier {

// One measure element of the file, which need not be a whole bar.
struct ScoreMeasure {
  std::string number;  // as printed
  bool implicit = false;
  Quarters length;
  std::optional<ScoreMeter> meter;  // in force; none where the score gives none
  std::optional<ScoreKey> key;      // in force
  std::optional<ScoreTempo> tempo;  // in force
  std::vector<ScoreNote> notes;     // of all hands
};

// A bar as a musician counts it: one measure element, or the pieces that a repeat sign cut it into.
struct ScoreBar {
  int first = 1;  // measure elements, from 1
  int last = 1;
  std::string printed;
  Quarters length;
  bool pickup = false;  // the first bar, shorter than its meter
  int number = 0;       // what it is called outside: see number_bars
};

struct ScorePart {
  std::string id;
  std::string name;
  bool taken = false;
};

struct Score {
  std::string file;
  std::string title;     // empty where the score has none
  std::string composer;  // empty where the score has none
  std::vector<ScorePart> parts;
  std::string part;         // id of the one that is taken; of two, "P1+P2"
  std::string part_reason;  // why it is taken
  std::vector<ScoreHand> hands;
  std::vector<ScoreMeasure> measures;
  std::vector<MeasureSigns> signs;  // of each measure
  std::vector<ScoreBar> bars;
  PlayOrder play_order;
  std::vector<ScoreLyric> lyrics;
  // What another part sings to the hands, by measure; empty where none does.
  std::vector<std::vector<ScoreNote>> sung;
  std::vector<ScoreWarning> warnings;
};

}  // namespace cahier
