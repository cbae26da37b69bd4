#include "workbook/sheets/runs/place_words.h"

#include <algorithm>
#include <vector>

#include "plan/phrase_map.h"
#include "text/phrasing.h"

namespace cahier {
namespace {

// The sentence for a number in words, and, beyond those, for one in figures.
struct Keys {
  const char* ordinal;
  const char* number;
};

std::string in_order(const Words& words, const Keys& keys, const std::string& section, int number) {
  const std::vector<std::string> ordinals = words.list("places.ordinals");
  if (number > static_cast<int>(ordinals.size()))
    return words.say(keys.number, {{"section", section}, {"number", number}});
  return words.say(keys.ordinal, {{"section", section}, {"ordinal", ordinals[number - 1]}});
}

}  // namespace

std::string place_text(const Words& words, const PlannedPiece& piece, int bar) {
  const auto section = std::ranges::find_if(
      piece.sections, [&](const PlannedSection& one) { return one.bars.contains(bar); });
  if (section == piece.sections.end() ||
      section->name == bar_range(section->bars.first, section->bars.last))
    return words.say("places.bar", {{"bar", bar}});
  const int first = std::max(1, section->bars.first);
  if (bar <= first) return section->name;
  const PhraseMap phrases(piece);
  if (!phrases.is_known(bar)) {
    const auto before = std::ranges::count_if(
        piece.rejoin, [&](int place) { return first < place && place <= bar; });
    return in_order(words, {"places.place", "places.place_number"}, section->name,
                    1 + static_cast<int>(before));
  }
  int number = 0;
  for (int at = first; at <= bar; ++at) number += phrases.begins(at) || at == first ? 1 : 0;
  const Keys keys = phrases.begins(bar) ? Keys{"places.phrase", "places.phrase_number"}
                                        : Keys{"places.inside", "places.inside_number"};
  return in_order(words, keys, section->name, number);
}

}  // namespace cahier
