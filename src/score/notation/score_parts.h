// The parts of a score, partwise or timewise, each as a row of measures.
#pragma once

#include <string>
#include <vector>

#include "score/notation/score_warnings.h"
#include "score/xml/xml_document.h"

namespace cahier {

struct WrittenMeasure {
  XmlElement content;  // whose children are notes, attributes, directions …; may be empty
  std::string number;  // as printed: "12", "X1", "12a"
  bool implicit = false;
};

struct WrittenPart {
  std::string id;
  std::string name;
  std::string sound;  // the first instrument-sound, "keyboard.piano"; may be empty
  int staves = 1;     // the most that its attributes or its notes name
  std::vector<WrittenMeasure> measures;

  // "P1 (Piano)"
  std::string called() const;
};

// Every part that has music, all with the same number of measures: one that ends early is silent
// from there on, with a warning. Throws InputError where there is no music, a part is not in the
// list of parts, or more is there than score_limits.h allows.
std::vector<WrittenPart> written_parts(const XmlDocument& score, ScoreWarnings& warnings);

}  // namespace cahier
