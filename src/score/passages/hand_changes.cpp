#include "score/passages/hand_changes.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "score/names/note_name.h"

namespace cahier {
namespace {

constexpr std::size_t kMostNamed = 4;  // notes; more are no longer read

using Names = std::vector<std::string>;

Names names_of(const std::vector<NoteInBar>& notes, int hand, bool with_octave) {
  Names names;
  for (const NoteInBar& note : notes) {
    if (note.hand != hand) continue;
    std::string name = note_name(note.pitch);
    if (with_octave) name += std::to_string(note.pitch.octave);
    if (std::ranges::find(names, name) == names.end()) names.push_back(std::move(name));
  }
  std::ranges::sort(names);
  return names;
}

Quarters longest(const std::vector<NoteInBar>& notes, int hand) {
  Quarters most;
  for (const NoteInBar& note : notes)
    if (note.hand == hand) most = std::max(most, note.duration);
  return most;
}

// nullopt where the hand does nothing else.
std::optional<HandChange> change_of_hand(const BarDifference& difference, int hand,
                                         const std::string& called) {
  using Kind = HandChange::Kind;
  Names was = names_of(difference.only_one, hand, false);
  Names is = names_of(difference.only_other, hand, false);
  if (was.empty() && is.empty()) return std::nullopt;
  HandChange change{Kind::instead, called};
  if (was == is) {
    was = names_of(difference.only_one, hand, true);
    is = names_of(difference.only_other, hand, true);
    if (was == is) {
      const bool longer = longest(difference.only_other, hand) > longest(difference.only_one, hand);
      change.kind = longer ? Kind::held_longer : Kind::held_shorter;
      change.is = std::move(is);
      return change;
    }
  }
  if (std::max(was.size(), is.size()) > kMostNamed) {
    change.kind = Kind::other_notes;
    return change;
  }
  if (was.empty()) change.kind = Kind::added;
  if (is.empty()) change.kind = Kind::left_out;
  change.is = std::move(is);
  change.was = std::move(was);
  return change;
}

}  // namespace

std::vector<HandChange> hand_changes(const BarDifference& difference,
                                     const std::vector<std::string>& hands) {
  std::vector<HandChange> changes;
  for (std::size_t hand = 0; hand < hands.size(); ++hand)
    if (auto change = change_of_hand(difference, static_cast<int>(hand), hands[hand]))
      changes.push_back(std::move(*change));
  return changes;
}

}  // namespace cahier
