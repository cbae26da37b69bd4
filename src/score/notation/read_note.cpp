#include "score/notation/read_note.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

namespace cahier {
namespace {

constexpr std::size_t kMostSyllables = 64;  // of a note; more are left out

SpelledPitch read_pitch(const XmlElement& pitch, bool drum, const std::string& where) {
  const XmlElement step = pitch.child(drum ? "display-step" : "step");
  const XmlElement octave = pitch.child(drum ? "display-octave" : "octave");
  if (drum && !step) return {'B', 0, 4, true};
  SpelledPitch read;
  read.drum = drum;
  const std::string letter = step.text();
  if (letter.size() != 1 || letter.front() < 'A' || letter.front() > 'G')
    (step ? step : pitch)
        .refuse(fmt::format("\"{}\" is no note", letter), "a step is one of A to G", where);
  read.step = letter.front();
  const int number = xml_whole(octave.text()).value_or(-1);
  if (number < 0 || number > 9)
    (octave ? octave : pitch)
        .refuse(fmt::format("\"{}\" is no octave", octave.text()),
                "octaves are 0 to 9; 4 begins at middle C", where);
  read.octave = number;
  if (const XmlElement alter = pitch.child("alter")) {
    const double semitones = xml_number(alter.text()).value_or(99);
    if (std::abs(semitones) > 4)
      alter.refuse(fmt::format("\"{}\" is no alteration", alter.text()),
                   "it is a number of semitones, 1 for a sharp", where);
    read.alter = static_cast<int>(std::lround(semitones * 100));
  }
  return read;
}

std::string on_a_line(std::string text) {
  std::ranges::replace_if(
      text, [](char one) { return one == '\n' || one == '\r' || one == '\t'; }, ' ');
  return text;
}

// Empty where a syllable is only drawn out.
std::vector<SungSyllable> read_sung(const XmlElement& element) {
  std::vector<SungSyllable> sung;
  for (const XmlElement& lyric : element.children("lyric")) {
    if (sung.size() == kMostSyllables) break;
    SungSyllable one{lyric.attribute("number"), {}};
    for (const XmlElement& text : lyric.children("text")) {
      const std::string words = on_a_line(text.text());
      if (!words.empty()) one.text += (one.text.empty() ? "" : " ") + words;
    }
    const std::vector<XmlElement> syllabic = lyric.children("syllabic");
    if (!syllabic.empty()) {
      const std::string first = syllabic.front().text();
      const std::string last = syllabic.back().text();
      one.joined = first == "middle" || first == "end";
      one.goes_on = last == "begin" || last == "middle";
    }
    if (!one.text.empty()) sung.push_back(std::move(one));
  }
  return sung;
}

constexpr int kMostSlurs = 16;  // at a time, as the standard numbers them

void read_notations(const XmlElement& element, ScoreNote& note) {
  for (const XmlElement& notations : element.children("notations")) {
    note.fermata = note.fermata || notations.has("fermata");
    const XmlElement articulations = notations.child("articulations");
    note.breath = note.breath || articulations.has("breath-mark") || articulations.has("caesura");
    for (const XmlElement& slur : notations.children("slur")) {
      const int number = xml_whole(slur.attribute("number")).value_or(1);
      if (number < 1 || number > kMostSlurs) continue;
      const auto bit = static_cast<std::uint16_t>(1u << (number - 1));
      const std::string type = slur.attribute("type");
      if (type == "start") note.slurs_begun |= bit;
      if (type == "stop") note.slurs_ended |= bit;
    }
  }
}

}  // namespace

ScoreNote read_note(const XmlElement& element, const std::string& where) {
  ScoreNote note;
  note.staff = element.has("staff") ? xml_whole(element.child("staff").text()).value_or(1) : 1;
  note.voice = element.child("voice").text();
  note.grace = element.has("grace");
  note.cue = element.has("cue");
  note.rest = element.has("rest");
  for (const XmlElement& tie : element.children("tie")) {
    const std::string type = tie.attribute("type");
    note.tie_stop = note.tie_stop || type == "stop";
    note.tie_start = note.tie_start || type == "start";
  }
  read_notations(element, note);
  if (note.rest) return note;
  note.sung = read_sung(element);
  if (const XmlElement pitch = element.child("pitch"))
    note.pitch = read_pitch(pitch, false, where);
  else if (const XmlElement drum = element.child("unpitched"))
    note.pitch = read_pitch(drum, true, where);
  else
    element.refuse("this is neither a pitch nor a rest", "write pitch, unpitched or rest", where);
  return note;
}

}  // namespace cahier
