// Where phrases end, as far as a score tells.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

// What tells it, the clearer the later.
enum class PhraseSign {
  slur_and_long_note,
  slur_and_rest,
  silence,  // of all hands, a quarter of a bar or more
  held,     // a fermata, a breath mark or a caesura
};

struct PhraseEnd {
  int bar = 0;  // the last of the phrase, by index; its upbeat to the next one included
  PhraseSign sign = PhraseSign::slur_and_long_note;
};

// In the order of the bars, each bar once, with its clearest sign; never the last bar. A slur
// counts where the top hand has it and it is nearly a bar long or more; the note that it ends with
// is long when it lasts twice as long as half of the slur's notes do at least, and a quarter of a
// bar. What comes next must begin at a bar line, up to half a bar before it, or up to a quarter of
// a bar after it: else there is no saying which bar it begins with.
std::vector<PhraseEnd> phrase_ends(const Score& score);

}  // namespace cahier
