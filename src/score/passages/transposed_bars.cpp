#include "score/passages/transposed_bars.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cstdlib>
#include <map>
#include <tuple>

namespace cahier {
namespace {

// Quarter tones are rounded down.
int semitones_of(const SpelledPitch& pitch) {
  constexpr std::array<int, 7> kSteps = {9, 11, 0, 2, 4, 5, 7};  // A to G
  return pitch.octave * 12 + kSteps[static_cast<std::size_t>(pitch.step - 'A')] + pitch.alter / 100;
}

using BarShape = std::vector<std::tuple<int, Quarters, Quarters, int>>;

}  // namespace

std::vector<std::optional<TransposedBar>> transposed_bars(const std::vector<BarNotes>& bars) {
  std::map<BarShape, int> shapes;
  std::vector<std::optional<TransposedBar>> all;
  for (const BarNotes& bar : bars) {
    const bool has_pitch =
        std::ranges::none_of(bar.notes, [](const NoteInBar& note) { return note.pitch.drum; });
    if (bar.notes.empty() || !has_pitch) {
      all.emplace_back();
      continue;
    }
    BarShape shape;
    for (const NoteInBar& note : bar.notes)
      shape.emplace_back(note.hand, note.onset, note.duration, semitones_of(note.pitch));
    // Sorted by sound, since spelling may change the order of notes that sound together.
    std::ranges::sort(shape);
    const int base = std::get<3>(shape.front());
    for (auto& note : shape) std::get<3>(note) -= base;
    const int next = static_cast<int>(shapes.size());
    all.push_back(TransposedBar{shapes.emplace(std::move(shape), next).first->second, base});
  }
  return all;
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
