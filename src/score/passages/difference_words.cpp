#include "score/passages/difference_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>

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

std::string joined(const Names& names) {
  std::string text;
  for (std::size_t at = 0; at < names.size(); ++at)
    text += (at == 0 ? "" : at + 1 == names.size() ? " and " : ", ") + names[at];
  return text;
}

Quarters longest(const std::vector<NoteInBar>& notes, int hand) {
  Quarters most;
  for (const NoteInBar& note : notes)
    if (note.hand == hand) most = std::max(most, note.duration);
  return most;
}

std::string change_of_hand(const BarDifference& difference, int hand) {
  Names was = names_of(difference.only_one, hand, false);
  Names is = names_of(difference.only_other, hand, false);
  if (was.empty() && is.empty()) return {};
  if (was == is) {
    was = names_of(difference.only_one, hand, true);
    is = names_of(difference.only_other, hand, true);
    if (was == is)
      return joined(is) + (longest(difference.only_other, hand) > longest(difference.only_one, hand)
                               ? " held longer"
                               : " held shorter");
  }
  if (std::max(was.size(), is.size()) > kMostNamed) return "other notes";
  if (was.empty()) return joined(is) + " added";
  if (is.empty()) return joined(was) + " left out";
  return fmt::format("{} instead of {}", joined(is), joined(was));
}

}  // namespace

std::string difference_words(const BarDifference& difference,
                             const std::vector<std::string>& hands) {
  std::string text;
  for (std::size_t hand = 0; hand < hands.size(); ++hand)
    if (const std::string change = change_of_hand(difference, static_cast<int>(hand));
        !change.empty())
      text += fmt::format("{}{}: {}", text.empty() ? "" : "; ", hands[hand], change);
  return text;
}

std::string transposition_words(int semitones) {
  constexpr std::array<const char*, 13> kIntervals = {"",
                                                      "a half step",
                                                      "a whole step",
                                                      "a minor third",
                                                      "a major third",
                                                      "a fourth",
                                                      "a tritone",
                                                      "a fifth",
                                                      "a minor sixth",
                                                      "a major sixth",
                                                      "a minor seventh",
                                                      "a major seventh",
                                                      "an octave"};
  const int size = std::abs(semitones);
  return fmt::format(
      "the same, {} {}",
      size <= 12 ? kIntervals[static_cast<std::size_t>(size)] : fmt::format("{} half steps", size),
      semitones > 0 ? "higher" : "lower");
}

}  // namespace cahier
