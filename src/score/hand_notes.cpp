#include "score/hand_notes.h"

#include <algorithm>
#include <tuple>

namespace cahier {

int hand_of_staff(const std::vector<ScoreHand>& hands, int staff) {
  for (std::size_t hand = 0; hand < hands.size(); ++hand)
    if (std::ranges::find(hands[hand].staves, staff) != hands[hand].staves.end())
      return static_cast<int>(hand);
  return static_cast<int>(hands.size()) - 1;
}

int staff_steps(const SpelledPitch& pitch) { return pitch.octave * 7 + (pitch.step - 'C' + 7) % 7; }

std::vector<HandNote> hand_notes(const Score& score, int bar, int hand) {
  std::vector<HandNote> notes;
  const ScoreBar& at = score.bars[static_cast<std::size_t>(bar)];
  Quarters begin;
  for (int element = at.first; element <= at.last; ++element) {
    const ScoreMeasure& measure = score.measures[static_cast<std::size_t>(element) - 1];
    for (const ScoreNote& note : measure.notes)
      if (note.sounds() && hand_of_staff(score.hands, note.staff) == hand)
        notes.push_back({begin + note.onset, note.pitch, note.grace, note.tie_stop});
    begin = begin + measure.length;
  }
  // Struck ones before held ones of the same pitch, so that these are the ones to go.
  std::ranges::stable_sort(notes, [](const HandNote& one, const HandNote& other) {
    if (one.onset != other.onset) return one.onset < other.onset;
    if (one.grace || other.grace) return one.grace && !other.grace;
    return std::tuple(staff_steps(one.pitch), one.pitch, one.held) <
           std::tuple(staff_steps(other.pitch), other.pitch, other.held);
  });
  const auto is_again = [](const HandNote& one, const HandNote& next) {
    return !one.grace && !next.grace && one.onset == next.onset && one.pitch == next.pitch;
  };
  notes.erase(std::unique(notes.begin(), notes.end(), is_again), notes.end());
  return notes;
}

}  // namespace cahier
