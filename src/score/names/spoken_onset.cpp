#include "score/names/spoken_onset.h"

#include <algorithm>

#include "score/hand_notes.h"

namespace cahier {

bool SpokenOnset::is_held() const {
  return std::ranges::all_of(notes, [](const SpokenNote& note) { return note.held; });
}

std::vector<SpokenOnset> spoken_onsets(const Score& score, int hand, int first_bar, int last_bar) {
  std::vector<SpokenOnset> all;
  for (int bar = first_bar; bar <= last_bar; ++bar) {
    std::vector<SpokenOnset> of_bar;
    for (const HandNote& note : hand_notes(score, bar, hand)) {
      if (note.pitch.drum) continue;
      if (of_bar.empty() || of_bar.back().grace || of_bar.back().onset != note.onset)
        of_bar.push_back({bar, note.onset, note.grace, {}, std::nullopt});
      of_bar.back().notes.push_back({note.pitch, note.held});
    }
    for (SpokenOnset& one : of_bar) {
      if (one.is_held() && (bar != first_bar || one.onset != Quarters())) continue;
      std::vector<SpelledPitch> pitches;
      for (const SpokenNote& note : one.notes) pitches.push_back(note.pitch);
      one.chord = chord_name(pitches);
      all.push_back(std::move(one));
    }
  }
  return all;
}

}  // namespace cahier
