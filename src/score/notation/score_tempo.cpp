#include "score/notation/score_tempo.h"

#include <fmt/format.h>

#include <array>
#include <utility>

namespace cahier {
namespace {

constexpr double kSlowest = 5;  // quarter notes a minute
constexpr double kFastest = 1000;

double quarters_of_unit(const XmlElement& metronome) {
  constexpr std::array<std::pair<std::string_view, double>, 7> kUnits = {{{"whole", 4},
                                                                          {"half", 2},
                                                                          {"quarter", 1},
                                                                          {"eighth", 0.5},
                                                                          {"16th", 0.25},
                                                                          {"32nd", 0.125},
                                                                          {"breve", 8}}};
  const std::string unit = metronome.child("beat-unit").text();
  for (const auto& [name, quarters] : kUnits)
    if (unit == name) {
      double length = quarters;
      double dot = quarters;
      for (std::size_t dots = metronome.children("beat-unit-dot").size(); dots > 0; --dots)
        length += dot /= 2;
      return length;
    }
  return 0;
}

// The first number of "60", "ca. 60" or "60-66"; 0 where there is none.
double first_number(const std::string& text) {
  const std::size_t begin = text.find_first_of("0123456789");
  if (begin == std::string::npos) return 0;
  const std::size_t end = text.find_first_not_of("0123456789.", begin);
  return xml_number(text.substr(begin, end - begin)).value_or(0);
}

class TempoReader {
 public:
  TempoReader(std::vector<std::optional<ScoreTempo>>& starts, ScoreWarnings& warnings)
      : starts_(starts), warnings_(warnings) {}

  void read(const XmlElement& measure, std::size_t at) {
    bool has_begun = false;
    for (const XmlElement& child : measure.children()) {
      has_begun = has_begun || (child.is("note") && !child.has("grace")) || child.is("forward");
      if (child.is("backup")) has_begun = true;
      const std::size_t from = at + (has_begun ? 1 : 0);
      if (child.is("sound"))
        sound(child, at, from);
      else if (child.is("direction"))
        direction(child, at, from);
    }
  }

 private:
  bool sound(const XmlElement& sound, std::size_t at, std::size_t from) {
    if (!sound.has_attribute("tempo")) return false;
    take(xml_number(sound.attribute("tempo")).value_or(0), at, from);
    return true;
  }

  void direction(const XmlElement& direction, std::size_t at, std::size_t from) {
    for (const XmlElement& one : direction.children("sound"))
      if (sound(one, at, from)) return;
    for (const XmlElement& type : direction.children("direction-type"))
      for (const XmlElement& mark : type.children("metronome"))
        if (mark.has("per-minute"))
          take(first_number(mark.child("per-minute").text()) * quarters_of_unit(mark), at, from);
  }

  void take(double tempo, std::size_t at, std::size_t from) {
    if (tempo < kSlowest || tempo > kFastest)
      warnings_.add(static_cast<int>(at) + 1,
                    fmt::format("a tempo of {:.4g} quarter notes a minute is passed over", tempo));
    else if (from < starts_.size() && !starts_[from])
      starts_[from] = ScoreTempo{tempo};
  }

  std::vector<std::optional<ScoreTempo>>& starts_;
  ScoreWarnings& warnings_;
};

}  // namespace

std::vector<std::optional<ScoreTempo>> read_tempi(const std::vector<WrittenPart>& parts,
                                                  ScoreWarnings& warnings) {
  std::vector<std::optional<ScoreTempo>> tempi(parts.front().measures.size());
  TempoReader reader(tempi, warnings);
  for (const WrittenPart& part : parts)
    for (std::size_t at = 0; at < tempi.size(); ++at) reader.read(part.measures[at].content, at);
  for (std::size_t at = 1; at < tempi.size(); ++at)
    if (!tempi[at]) tempi[at] = tempi[at - 1];
  return tempi;
}

}  // namespace cahier
