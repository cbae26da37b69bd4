// Where phrases end, as far as a score tells.
#pragma once

#include <vector>

#include "score/score.h"

namespace cahier {

// What tells it, the clearer the later.
enum class PhraseSign {
  long_note,  // at the end of a slur of the top hand, or sung
  rest,       // likewise
  new_key,    // or a new meter, a double bar or a repeat sign
  silence,    // of all hands, a quarter of a bar or more; not where another part sings
  held,       // a fermata, a breath mark or a caesura
};

struct PhraseEnd {
  int bar = 0;  // the last of the phrase, by index; its upbeat to the next one included
  PhraseSign sign = PhraseSign::long_note;
};

// In the order of the bars, each bar once, with its clearest sign; never the last bar. Where words
// are sung, that line leads, whoever has it: its rests of an eighth of a bar and its notes of half
// a bar count. Else slurs of the top hand do, from three quarters of a bar, by what stands at their
// end. A note is long when it lasts a quarter of a bar and twice as long as half of the notes
// before it, of the slur or of the sung line since its last rest, 32 at most. What comes next must
// begin at a bar line, up to half a bar before it, or up to a quarter of a bar after it: else there
// is no saying which bar it begins with.
std::vector<PhraseEnd> phrase_ends(const Score& score);

}  // namespace cahier
