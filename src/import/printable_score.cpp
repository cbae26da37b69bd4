#include "import/printable_score.h"

#include <algorithm>

#include "paper/typeface.h"
#include "text/utf8.h"

namespace cahier {

Score printable(Score score) {
  const Typefaces typefaces;
  bool is_whole = true;
  const auto keep_printable = [&](std::string& text) {
    std::vector<char32_t> missing = typefaces.missing(text, Face::sans);
    for (const char32_t one : typefaces.missing(text, Face::sans_bold)) missing.push_back(one);
    if (missing.empty()) return;
    is_whole = false;
    std::vector<char32_t> characters = decode_utf8(text);
    std::erase_if(characters,
                  [&](char32_t one) { return std::ranges::find(missing, one) != missing.end(); });
    text = encode_utf8(characters);
  };
  keep_printable(score.title);
  keep_printable(score.composer);
  for (ScoreHand& hand : score.hands) keep_printable(hand.name);
  for (ScoreMeasure& measure : score.measures)
    for (ScoreNote& note : measure.notes)
      for (SungSyllable& syllable : note.sung) keep_printable(syllable.text);
  for (MeasureSigns& signs : score.signs) {
    keep_printable(signs.rehearsal);
    if (signs.jump) keep_printable(signs.jump->words);
  }
  if (!is_whole)
    score.warnings.insert(score.warnings.begin(),
                          {0, "characters that cannot be printed are left out of the texts"});
  return score;
}

}  // namespace cahier
