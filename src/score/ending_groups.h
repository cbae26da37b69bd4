// First and second endings, and how often what is before them is played.
#pragma once

#include <vector>

#include "score/notation/navigation.h"

namespace cahier {

struct ScoreEnding {
  int first = 0;  // measure elements, from 0
  int last = 0;
  std::vector<int> passes;
  bool goes_back = false;  // a repeat ends with it
  int group = 0;

  bool is_for(int pass) const;
};

// The endings of one repeat, which follow each other.
struct EndingGroup {
  int first_ending = 0;
  int last_ending = 0;
  int passes = 2;           // of the repeat
  bool is_repeated = true;  // a repeat sign or a jump goes with them
};

struct ScoreEndings {
  std::vector<ScoreEnding> endings;
  std::vector<EndingGroup> groups;

  // The ending that begins at the element, or that the element is in; nullptr where there is none.
  const ScoreEnding* beginning_at(int element) const;
  const ScoreEnding* around(int element) const;
  // The last element of the ending's group.
  int end_of_group(const ScoreEnding& ending) const;
};

// An ending without an end goes as far as the repeat sign or the next ending; one without a number
// is for the next pass. Endings that follow each other belong to one repeat. It is played as often
// as the highest number says or the repeat sign's `times`, if that is more; once more where the
// only ending goes back, since something must be played after it.
ScoreEndings find_endings(const std::vector<MeasureSigns>& signs, ScoreWarnings& warnings);

}  // namespace cahier
