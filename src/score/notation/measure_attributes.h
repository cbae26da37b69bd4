// Meter and key as a score gives them.
#pragma once

#include <optional>
#include <string>

#include "score/notation/quarters.h"
#include "score/notation/score_warnings.h"
#include "score/xml/xml_element.h"

namespace cahier {

struct ScoreMeter {
  std::string text;  // "6/8", "2+3/8", "2/4+3/8"
  Quarters length;   // of a whole bar
  bool operator==(const ScoreMeter&) const = default;
};

struct ScoreKey {
  int fifths = 0;    // sharps positive, flats negative
  std::string mode;  // as the score says; empty where it says nothing, and never guessed
  bool operator==(const ScoreKey&) const = default;
};

// A time element; nullopt for music without measure (senza misura). `element` is the number of the
// measure element, for warnings. Throws InputError for a meter that cannot be.
std::optional<ScoreMeter> read_score_meter(const XmlElement& time, const std::string& where);

// A key element; nullopt, with a warning, for one that is no circle-of-fifths signature. Throws
// InputError for more than seven sharps or flats.
std::optional<ScoreKey> read_score_key(const XmlElement& key, int element, const std::string& where,
                                       ScoreWarnings& warnings);

}  // namespace cahier
