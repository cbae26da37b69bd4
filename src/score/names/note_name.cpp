#include "score/names/note_name.h"

#include <array>
#include <cstdlib>

namespace cahier {
namespace {

// "Cis", "Eses", "As", "B" for B flat, "Heses" for B double flat.
std::string german_name(char step, int semitones) {
  if (step == 'B' && semitones == -1) return "B";
  std::string name(1, step == 'B' ? 'H' : step);
  for (int at = 0; at < std::abs(semitones); ++at) {
    const bool is_vowel = at == 0 && (step == 'A' || step == 'E');
    name += semitones > 0 ? "is" : is_vowel ? "s" : "es";
  }
  return name;
}

std::string solfege_name(char step) {
  constexpr std::array<const char*, 7> kNames = {"la", "si", "do", "re", "mi", "fa", "sol"};
  return kNames[static_cast<std::size_t>(step - 'A')];
}

std::string with_signs(std::string name, int semitones, const Words& words) {
  int left = std::abs(semitones);
  for (; left >= 2; left -= 2)
    name = words.say(semitones > 0 ? "note_names.double_sharp" : "note_names.double_flat",
                     {{"note", name}});
  if (left == 1)
    name = words.say(semitones > 0 ? "note_names.sharp" : "note_names.flat", {{"note", name}});
  return name;
}

}  // namespace

std::string note_name(const SpelledPitch& pitch) {
  std::string name(1, pitch.step);
  for (int sign = std::abs(pitch.alter) / 100; sign > 0; --sign)
    name += pitch.alter > 0 ? "♯" : "♭";
  return name;
}

std::string spoken_note(const SpelledPitch& pitch, Naming naming, const Words& words) {
  const int semitones = pitch.alter / 100;
  std::string name;
  if (naming == Naming::german)
    name = german_name(pitch.step, semitones);
  else
    name = with_signs(
        naming == Naming::solfege ? solfege_name(pitch.step) : std::string(1, pitch.step),
        semitones, words);
  if (pitch.alter % 100 == 0) return name;
  return words.say(pitch.alter > 0 ? "note_names.raised" : "note_names.lowered", {{"note", name}});
}

}  // namespace cahier
