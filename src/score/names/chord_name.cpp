#include "score/names/chord_name.h"

#include <algorithm>
#include <array>

#include "score/hand_notes.h"

namespace cahier {
namespace {

constexpr int kLacking = -1;

// Semitones from the root, for the letters a third, a fifth and a seventh above it (common
// practice, the table of chord qualities in any harmony book).
struct ChordRow {
  ChordQuality quality;
  int third;
  int fifth;
  int seventh;
};

// Where the fifth is lacking the first that fits is taken: perfect ones come before others.
constexpr std::array<ChordRow, 11> kChords = {{{ChordQuality::major, 4, 7, kLacking},
                                               {ChordQuality::minor, 3, 7, kLacking},
                                               {ChordQuality::diminished, 3, 6, kLacking},
                                               {ChordQuality::augmented, 4, 8, kLacking},
                                               {ChordQuality::dominant_seventh, 4, 7, 10},
                                               {ChordQuality::major_seventh, 4, 7, 11},
                                               {ChordQuality::minor_seventh, 3, 7, 10},
                                               {ChordQuality::minor_major_seventh, 3, 7, 11},
                                               {ChordQuality::half_diminished_seventh, 3, 6, 10},
                                               {ChordQuality::diminished_seventh, 3, 6, 9},
                                               {ChordQuality::augmented_major_seventh, 4, 8, 11}}};

int letter_from_c(const SpelledPitch& pitch) { return (pitch.step - 'C' + 7) % 7; }

int semitones_from_c(const SpelledPitch& pitch) {
  constexpr std::array<int, 7> kNatural = {0, 2, 4, 5, 7, 9, 11};
  return kNatural[static_cast<std::size_t>(letter_from_c(pitch))] + pitch.alter / 100;
}

int letters_above(const SpelledPitch& root, const SpelledPitch& pitch) {
  return (pitch.step - root.step + 7) % 7;
}

// To the next such letter upwards; below nothing for strange alterations.
int semitones_above(const SpelledPitch& root, const SpelledPitch& pitch) {
  return semitones_from_c(pitch) - semitones_from_c(root) +
         (letter_from_c(pitch) < letter_from_c(root) ? 12 : 0);
}

bool same_name(const SpelledPitch& one, const SpelledPitch& other) {
  return one.step == other.step && one.alter == other.alter;
}

// The chord on this root, in root position.
std::optional<ChordName> chord_on(const SpelledPitch& root,
                                  const std::vector<SpelledPitch>& names) {
  std::array<int, 7> found{};
  found.fill(kLacking);
  for (const SpelledPitch& name : names) {
    const auto letters = static_cast<std::size_t>(letters_above(root, name));
    const int semitones = semitones_above(root, name);
    if (found[letters] != kLacking || semitones < 0) return std::nullopt;
    found[letters] = semitones;
  }
  if (found[1] != kLacking || found[3] != kLacking || found[5] != kLacking) return std::nullopt;
  const bool without_fifth = found[4] == kLacking && found[6] != kLacking;
  for (const ChordRow& row : kChords)
    if (found[2] == row.third && found[6] == row.seventh &&
        (found[4] == row.fifth || without_fifth))
      return ChordName{root, row.quality, 0, without_fifth};
  return std::nullopt;
}

}  // namespace

std::optional<ChordName> chord_name(const std::vector<SpelledPitch>& pitches) {
  std::vector<SpelledPitch> names;  // each once, from the bottom
  std::vector<SpelledPitch> sorted = pitches;
  std::ranges::sort(sorted, {}, [](const SpelledPitch& pitch) {
    return std::pair(staff_steps(pitch), pitch.alter);
  });
  for (const SpelledPitch& pitch : sorted) {
    if (pitch.drum || pitch.alter % 100 != 0) return std::nullopt;
    if (std::ranges::none_of(names,
                             [&](const SpelledPitch& name) { return same_name(name, pitch); }))
      names.push_back(pitch);
  }
  for (const SpelledPitch& root : names)
    if (auto chord = chord_on(root, names)) {
      chord->inversion = letters_above(root, names.front()) / 2;
      return chord;
    }
  return std::nullopt;
}

}  // namespace cahier
