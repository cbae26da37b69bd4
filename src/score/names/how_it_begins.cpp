#include "score/names/how_it_begins.h"

#include <utility>

#include "piece/meter.h"
#include "score/names/note_name.h"
#include "score/names/spoken_onset.h"
#include "score/names/spoken_text.h"
#include "score/names/sung_words.h"

namespace cahier {
namespace {

double beat_quarters(const Score& score, int bar) {
  const ScoreBar& at = score.bars[static_cast<std::size_t>(bar)];
  const auto& meter = score.measures[static_cast<std::size_t>(at.first) - 1].meter;
  const auto counted = meter ? parse_meter(meter->text) : std::nullopt;
  return counted ? quarters(natural_beat(*counted)) : 1;
}

std::string short_name(const SpelledPitch& pitch, bool with_octave) {
  return note_name(pitch) + (with_octave ? std::to_string(pitch.octave) : "");
}

std::string short_name(const SpokenOnset& onset, bool with_octave, const Words& words) {
  std::string name = short_name(onset.notes.front().pitch, with_octave);
  if (onset.notes.size() > 1) name += "–" + short_name(onset.notes.back().pitch, with_octave);
  return onset.is_held() ? words.say("note_names.held", {{"note", name}}) : name;
}

std::string hand_label(const std::string& hand, const Words& words) {
  if (hand == "right hand") return words.say("note_names.right_hand");
  if (hand == "left hand") return words.say("note_names.left_hand");
  return hand;
}

}  // namespace

std::vector<HandBeginning> how_it_begins(const Score& score, int bar, const Words& words) {
  const double until = kBeginningBeats * beat_quarters(score, bar);
  std::vector<HandBeginning> all;
  for (int hand = 0; hand < static_cast<int>(score.hands.size()); ++hand) {
    HandBeginning found{hand, {}, {}};
    for (const SpokenOnset& onset : spoken_onsets(score, hand, bar, bar))
      if (!onset.grace && onset.onset.value() < until && found.names.size() < kMostBeginningNames) {
        const bool is_first = found.names.empty();
        found.names.push_back(short_name(onset, is_first, words));
        found.aloud.push_back(spoken_text(onset, {Naming::letters, is_first}, words));
      }
    if (found.names.empty()) continue;
    found.sung = sung_words(score, hand, bar, until);
    all.push_back(std::move(found));
  }
  return all;
}

namespace {

std::string with_words(std::string notes, const HandBeginning& hand, const Words& words) {
  if (hand.sung.empty()) return notes;
  return words.say("note_names.sung", {{"notes", std::move(notes)}, {"words", hand.sung}});
}

}  // namespace

std::string beginning_text(const Score& score, const std::vector<HandBeginning>& hands,
                           const Words& words) {
  std::string text;
  for (const HandBeginning& one : hands) {
    std::string names;
    for (const std::string& name : one.names) names += (names.empty() ? "" : " ") + name;
    names = with_words(std::move(names), one, words);
    if (score.hands.size() == 1) return names;
    const std::string& hand = score.hands[static_cast<std::size_t>(one.hand)].name;
    text += (text.empty() ? "" : " · ") +
            words.say("note_names.of_hand", {{"hand", hand_label(hand, words)}, {"notes", names}});
  }
  return text;
}

std::vector<std::string> beginning_aloud(const Score& score,
                                         const std::vector<HandBeginning>& hands,
                                         const Words& words) {
  std::vector<std::string> lines;
  for (const HandBeginning& one : hands) {
    std::string notes;
    for (const std::string& name : one.aloud) notes += (notes.empty() ? "" : "; ") + name;
    notes = with_words(std::move(notes), one, words);
    if (score.hands.size() > 1)
      notes = words.say(
          "note_names.of_hand",
          {{"hand", score.hands[static_cast<std::size_t>(one.hand)].name}, {"notes", notes}});
    lines.push_back(std::move(notes));
  }
  return lines;
}

}  // namespace cahier
