// Where phrases begin, as far as the piece tells.
#pragma once

#include <vector>

#include "plan/plan.h"

namespace cahier {

// Where a section names no phrases, nothing is known but that one begins with it. A return has
// those of the bars it repeats, where it names none itself. With a pickup, bar 0 and bar 1 are one
// start.
class PhraseMap {
 public:
  explicit PhraseMap(const PlannedPiece& planned);

  bool begins(int bar) const { return begins_[bar]; }
  bool is_known(int bar) const { return known_[bar]; }
  // Where the phrase begins that is nearest to `bar`, among those that begin in the section.
  int nearest_start(int bar, BarRange section) const;
  // By bar: which phrase it lies in; a section that names none is one.
  int phrase_at(int bar) const { return phrase_at_[bar]; }

 private:
  std::vector<bool> begins_;
  std::vector<bool> known_;
  std::vector<int> phrase_at_;
};

}  // namespace cahier
