#include "plan/chunk_labels.h"

#include <algorithm>
#include <cctype>
#include <iterator>
#include <set>

#include "text/phrasing.h"

namespace cahier {
namespace {

// As names are compared: without spaces and signs, in small letters.
std::string folded(const std::string& name) {
  std::string text;
  for (const char c : name) {
    const auto byte = static_cast<unsigned char>(c);
    if (byte >= 128 || std::isalnum(byte) != 0)
      text += static_cast<char>(byte < 128 ? std::tolower(byte) : byte);
  }
  return text;
}

// The letters of an id, without its number.
std::string letters_of(const std::string& id) {
  return id.substr(0, id.find_last_not_of("0123456789") + 1);
}

using Names = std::multiset<std::string>;

std::ptrdiff_t beginning_with(const Names& names, const std::string& letters) {
  const auto first = names.lower_bound(letters);
  const auto end = std::find_if(
      first, names.end(), [&](const std::string& name) { return !name.starts_with(letters); });
  return std::distance(first, end);
}

}  // namespace

ChunkLabels::ChunkLabels(const PlannedPiece& piece) : by_bars_(piece.sections.size(), false) {
  Names all;
  Names learned;  // but returns, which are the same music
  std::vector<bool> named;
  for (const PlannedSection& section : piece.sections) {
    named.push_back(section.name != bar_range(section.bars.first, section.bars.last));
    if (!named.back()) continue;
    all.insert(folded(section.name));
    if (!section.same_as) learned.insert(folded(section.name));
  }
  if (all.empty()) return;
  for (const Chunk& chunk : piece.chunks) {
    const std::string letters = folded(letters_of(chunk.id));
    const std::string own = folded(piece.sections[chunk.section].name);
    bool clash = all.contains(folded(chunk.id));
    if (!named[chunk.section])
      clash = clash || beginning_with(all, letters) > 0;
    else if (own != letters)
      clash = clash || !own.starts_with(letters) || beginning_with(learned, letters) > 1;
    if (clash) by_bars_[chunk.section] = true;
  }
}

std::string ChunkLabels::of(const Chunk& chunk) const {
  return by_bars(chunk) ? bar_range(chunk.bars.first, chunk.bars.last) : chunk.id;
}

}  // namespace cahier
