#include "score/passages/bar_likeness.h"

#include <algorithm>
#include <iterator>

namespace cahier {

double likeness(const BarNotes& one, const BarNotes& other) {
  std::size_t common = 0;
  auto mine = one.note_numbers.begin();
  auto theirs = other.note_numbers.begin();
  while (mine != one.note_numbers.end() && theirs != other.note_numbers.end()) {
    if (*mine < *theirs) {
      ++mine;
    } else if (*theirs < *mine) {
      ++theirs;
    } else {
      ++common;
      ++mine;
      ++theirs;
    }
  }
  const std::size_t all = one.notes.size() + other.notes.size() - common;
  return all == 0 ? 1 : static_cast<double>(common) / static_cast<double>(all);
}

std::optional<BarDifference> first_difference(const BarNotes& one, const BarNotes& other) {
  BarDifference found;
  std::ranges::set_difference(one.notes, other.notes, std::back_inserter(found.only_one));
  std::ranges::set_difference(other.notes, one.notes, std::back_inserter(found.only_other));
  if (found.only_one.empty() && found.only_other.empty()) return std::nullopt;
  const auto earliest = [](const std::vector<NoteInBar>& notes, Quarters bound) {
    for (const NoteInBar& note : notes) bound = std::min(bound, note.onset);
    return bound;
  };
  found.onset =
      found.only_one.empty() ? found.only_other.front().onset : found.only_one.front().onset;
  found.onset = earliest(found.only_other, earliest(found.only_one, found.onset));
  for (std::vector<NoteInBar>* notes : {&found.only_one, &found.only_other})
    std::erase_if(*notes, [&](const NoteInBar& note) { return note.onset != found.onset; });
  return found;
}

}  // namespace cahier
