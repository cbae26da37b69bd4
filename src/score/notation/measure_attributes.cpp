#include "score/notation/measure_attributes.h"

#include <fmt/format.h>

namespace cahier {
namespace {

constexpr int kMostBeats = 64;

// "3" or "3+2"; 0 for anything else.
int sum_of_beats(std::string_view text) {
  int sum = 0;
  while (true) {
    const std::size_t plus = text.find('+');
    const std::optional<int> beats = xml_whole(text.substr(0, plus));
    if (!beats || *beats < 1 || *beats > kMostBeats) return 0;
    sum += *beats;
    if (plus == std::string_view::npos || sum > kMostBeats) return sum;
    text.remove_prefix(plus + 1);
  }
}

bool is_power_of_two(int number) { return number > 0 && (number & (number - 1)) == 0; }

}  // namespace

std::optional<ScoreMeter> read_score_meter(const XmlElement& time, const std::string& where) {
  if (time.has("senza-misura")) return std::nullopt;
  const std::vector<XmlElement> beats = time.children("beats");
  const std::vector<XmlElement> units = time.children("beat-type");
  ScoreMeter meter;
  for (std::size_t one = 0; one < beats.size() && one < units.size(); ++one) {
    const std::string text = beats[one].text();
    const int count = sum_of_beats(text);
    if (count < 1 || count > kMostBeats)
      beats[one].refuse(fmt::format("a bar cannot have \"{}\" beats", text),
                        fmt::format("a meter has from 1 to {} beats", kMostBeats), where);
    const int unit = xml_whole(units[one].text()).value_or(0);
    if (!is_power_of_two(unit) || unit > 128)
      units[one].refuse(fmt::format("\"{}\" is no beat of a meter", units[one].text()),
                        "the lower number is 1, 2, 4, 8, 16, 32, 64 or 128", where);
    if (!meter.text.empty()) meter.text += "+";
    meter.text += fmt::format("{}/{}", text, unit);
    meter.length = meter.length + Quarters(count * 4, unit);
  }
  if (meter.text.empty())
    time.refuse("this meter has no beats", "write beats and beat-type", where);
  return meter;
}

std::optional<ScoreKey> read_score_key(const XmlElement& key, int element, const std::string& where,
                                       ScoreWarnings& warnings) {
  if (!key.has("fifths")) {
    warnings.add(element, "this key signature is no usual one; it is passed over");
    return std::nullopt;
  }
  const XmlElement written = key.child("fifths");
  const std::optional<int> fifths = xml_whole(written.text());
  if (!fifths || *fifths < -7 || *fifths > 7)
    written.refuse("a key has up to seven sharps (7) or seven flats (-7)",
                   "correct the key signature in the notation program", where);
  ScoreKey found{*fifths, key.child("mode").text()};
  if (found.mode == "none") found.mode.clear();
  return found;
}

}  // namespace cahier
