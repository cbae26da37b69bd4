#include "score/names/spoken_text.h"

#include <algorithm>

#include "text/phrasing.h"

namespace cahier {
namespace {

const char* key_of(ChordQuality quality) {
  switch (quality) {
    case ChordQuality::major:
      return "chord_names.major";
    case ChordQuality::minor:
      return "chord_names.minor";
    case ChordQuality::diminished:
      return "chord_names.diminished";
    case ChordQuality::augmented:
      return "chord_names.augmented";
    case ChordQuality::dominant_seventh:
      return "chord_names.dominant_seventh";
    case ChordQuality::major_seventh:
      return "chord_names.major_seventh";
    case ChordQuality::minor_seventh:
      return "chord_names.minor_seventh";
    case ChordQuality::minor_major_seventh:
      return "chord_names.minor_major_seventh";
    case ChordQuality::half_diminished_seventh:
      return "chord_names.half_diminished_seventh";
    case ChordQuality::diminished_seventh:
      return "chord_names.diminished_seventh";
    case ChordQuality::augmented_major_seventh:
      return "chord_names.augmented_major_seventh";
  }
  return "";
}

std::string octave_text(const SpelledPitch& pitch, const SpokenStyle& style, const Words& words) {
  std::string name = spoken_note(pitch, style.naming, words);
  if (!style.with_octaves) return name;
  return words.say("note_names.with_octave", {{"note", name}, {"octave", pitch.octave}});
}

bool is_octaves(const std::vector<SpokenNote>& notes) {
  return notes.size() > 1 && std::ranges::all_of(notes, [&](const SpokenNote& note) {
           return note.pitch.step == notes.front().pitch.step &&
                  note.pitch.alter == notes.front().pitch.alter;
         });
}

std::string from_the_bottom(const SpokenOnset& onset, const SpokenStyle& style,
                            const Words& words) {
  if (is_octaves(onset.notes))
    return words.say("note_names.in_octaves",
                     {{"note", octave_text(onset.notes.front().pitch, style, words)}});
  std::vector<std::string> names;
  for (const SpokenNote& note : onset.notes) {
    names.push_back(octave_text(note.pitch, style, words));
    if (note.held && !onset.is_held())
      names.back() = words.say("note_names.held", {{"note", names.back()}});
  }
  return list_text(words, names);
}

}  // namespace

std::string spoken_text(const ChordName& chord, Naming naming, const Words& words) {
  std::string text =
      words.say(key_of(chord.quality), {{"root", spoken_note(chord.root, naming, words)}});
  if (chord.without_fifth) text = words.say("chord_names.without_fifth", {{"chord", text}});
  if (chord.inversion == 1) return words.say("chord_names.first_inversion", {{"chord", text}});
  if (chord.inversion == 2) return words.say("chord_names.second_inversion", {{"chord", text}});
  if (chord.inversion == 3) return words.say("chord_names.third_inversion", {{"chord", text}});
  return text;
}

std::string spoken_text(const SpokenOnset& onset, const SpokenStyle& style, const Words& words) {
  std::string text = onset.chord ? spoken_text(*onset.chord, style.naming, words)
                                 : from_the_bottom(onset, style, words);
  if (onset.grace) text = words.say("note_names.grace", {{"note", text}});
  return onset.is_held() ? words.say("note_names.held", {{"note", text}}) : text;
}

std::string spoken_text(const std::vector<SpokenOnset>& onsets, const SpokenStyle& style,
                        const Words& words) {
  std::string text;
  for (const SpokenOnset& onset : onsets)
    text += (text.empty() ? "" : "; ") + spoken_text(onset, style, words);
  return text;
}

}  // namespace cahier
