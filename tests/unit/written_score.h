// Small scores for tests, written in MusicXML. All music here is invented.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "score/read_score.h"
#include "text/errors.h"

namespace cahier::written {

struct Xml {
  std::string pitch = "C4";  // or "F#4", "Bb3"
  int duration = 1;
  int staff = 1;
  std::string extra;  // elements after the pitch
  bool chord = false;
  bool grace = false;
};

inline std::string pitch(const std::string& name) {
  const int alter = name.size() < 3 ? 0 : name[1] == '#' ? 1 : -1;
  return fmt::format("<pitch><step>{}</step>{}<octave>{}</octave></pitch>", name.front(),
                     alter == 0 ? "" : fmt::format("<alter>{}</alter>", alter), name.back());
}

inline std::string note(const Xml& xml) {
  return fmt::format("<note>{}{}{}{}{}<staff>{}</staff></note>\n", xml.grace ? "<grace/>" : "",
                     xml.chord ? "<chord/>" : "", pitch(xml.pitch),
                     xml.grace ? "" : fmt::format("<duration>{}</duration>", xml.duration),
                     xml.extra, xml.staff);
}

inline std::string note(const std::string& pitch, int duration, int staff = 1) {
  return note(Xml{pitch, duration, staff, "", false, false});
}

inline std::string rest(int duration, int staff = 1) {
  return fmt::format("<note><rest/><duration>{}</duration><staff>{}</staff></note>\n", duration,
                     staff);
}

inline std::string backup(int duration) {
  return fmt::format("<backup><duration>{}</duration></backup>\n", duration);
}

inline std::string forward(int duration) {
  return fmt::format("<forward><duration>{}</duration></forward>\n", duration);
}

inline std::string attributes(const std::string& meter = "4/4", const std::string& key = "0",
                              int staves = 1, int divisions = 1) {
  const std::size_t slash = meter.find('/');
  return fmt::format(
      "<attributes><divisions>{}</divisions><key><fifths>{}</fifths></key>"
      "<time><beats>{}</beats><beat-type>{}</beat-type></time><staves>{}</staves>"
      "</attributes>\n",
      divisions, key, meter.substr(0, slash), meter.substr(slash + 1), staves);
}

inline std::string measure(const std::string& number, const std::string& content,
                           const std::string& more = "") {
  return fmt::format("<measure number=\"{}\"{}{}>\n{}</measure>\n", number, more.empty() ? "" : " ",
                     more, content);
}

struct Part {
  std::string id;
  std::string name;
  std::string measures;
};

inline std::string part_list(const std::vector<Part>& parts) {
  std::string list;
  for (const Part& part : parts)
    list += fmt::format("<score-part id=\"{}\"><part-name>{}</part-name></score-part>\n", part.id,
                        part.name);
  return "<part-list>\n" + list + "</part-list>\n";
}

inline std::string partwise(const std::vector<Part>& parts, const std::string& head = "") {
  std::string text = "<score-partwise version=\"4.0\">\n" + head + part_list(parts);
  for (const Part& part : parts)
    text += fmt::format("<part id=\"{}\">\n{}</part>\n", part.id, part.measures);
  return text + "</score-partwise>\n";
}

inline std::string piano(const std::string& measures) {
  return partwise({{"P1", "Piano", measures}});
}

// Bars 1 to `count` in 4/4, each a whole note, the same in all; `signs[n]` stands in bar n + 1, at
// its end where it is a right bar line, as the file has it.
inline std::string bars_with(const std::vector<std::string>& signs) {
  std::string measures;
  for (std::size_t at = 0; at < signs.size(); ++at)
    measures +=
        measure(std::to_string(at + 1), (at == 0 ? attributes() : "") + signs[at] + note("C4", 4));
  return piano(measures);
}

inline Score read(const std::string& xml, const std::string& part = "") {
  return read_score("a.musicxml", xml, part);
}

// The one message with which it is refused; empty when it is read.
inline Diagnostic refusal(const std::string& bytes, const std::string& part = "") {
  try {
    read(bytes, part);
  } catch (const InputError& error) {
    return error.diagnostics().front();
  }
  return {};
}

inline bool warns(const Score& score, int element, const std::string& words) {
  for (const ScoreWarning& one : score.warnings)
    if (one.element == element && one.say.find(words) != std::string::npos) return true;
  return false;
}

// An ending over a whole measure, and what stands at its right besides.
inline std::string ending(const std::string& number, const std::string& sign = "") {
  return "<barline location=\"left\"><ending number=\"" + number +
         "\" type=\"start\"/></barline><barline location=\"right\"><ending number=\"" + number +
         "\" type=\"stop\"/></barline>" + sign;
}

inline std::string sound(const std::string& what) {
  return "<direction><direction-type><words>x</words></direction-type><sound " + what +
         "/></direction>";
}

}  // namespace cahier::written
