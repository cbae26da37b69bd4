#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>

#include "import/piece_lines.h"
#include "piece/meter.h"

namespace cahier {
namespace {

constexpr double kSlowestBeat = 10;  // what a piece file takes
constexpr double kFastestBeat = 400;

// "A minor", or "2 flats" where the score gives no mode.
std::string key_words(const ScoreKey& key) {
  constexpr std::array<const char*, 15> kMajor = {
      "C flat", "G flat", "D flat", "A flat", "E flat", "B flat",  "F",      "C",
      "G",      "D",      "A",      "E",      "B",      "F sharp", "C sharp"};
  constexpr std::array<const char*, 15> kMinor = {
      "A flat", "E flat", "B flat",  "F",       "C",       "G",       "D",      "A",
      "E",      "B",      "F sharp", "C sharp", "G sharp", "D sharp", "A sharp"};
  const auto at = static_cast<std::size_t>(key.fifths + 7);
  if (key.mode == "major") return fmt::format("{} major", kMajor[at]);
  if (key.mode == "minor") return fmt::format("{} minor", kMinor[at]);
  if (key.fifths == 0) return "no sharps or flats";
  return fmt::format("{} {}{}", std::abs(key.fifths), key.fifths > 0 ? "sharp" : "flat",
                     std::abs(key.fifths) == 1 ? "" : "s");
}

// A piece file has no sums of different meters: 2/4+3/8 is 7/8 there. Empty where nothing fits.
std::string meter_words(const ScoreMeter& meter) {
  if (parse_meter(meter.text)) return meter.text;
  for (const int unit : {4, 8, 16, 32}) {
    const Quarters beats(meter.length.upper() * unit, meter.length.lower() * 4);
    const std::string text = fmt::format("{}/{}", beats.upper(), unit);
    if (beats.lower() == 1 && parse_meter(text)) return text;
  }
  return {};
}

// "tempo: 60, beat: dotted quarter" with `between` for the comma.
std::string tempo_words(const ScoreTempo& tempo, const std::string& meter,
                        const std::string& between) {
  const auto counted = parse_meter(meter);
  const Beat beat = counted ? natural_beat(*counted) : Beat::quarter;
  const double per_minute = std::round(tempo.per_minute / quarters(beat) * 10) / 10;
  if (per_minute < kSlowestBeat || per_minute > kFastestBeat) return {};
  return fmt::format("tempo: {:.4g}{}beat: {}", per_minute, between, beat_name(beat));
}

class MusicLines {
 public:
  explicit MusicLines(const Score& score) : score_(score) {}

  std::string first() {
    const ScoreBar& bar = score_.bars.front();
    const ScoreMeasure& measure = measure_of(bar);
    const int bars = score_.bars.back().number;
    std::string text = fmt::format("bars: {}\n", bars);
    meter_ = measure.meter ? meter_words(*measure.meter) : "";
    if (bar.number == 0) text += pickup(bar);
    if (!meter_.empty()) text += fmt::format("meter: {}\n", meter_);
    if (measure.key) text += fmt::format("key: {}\n", key_words(*measure.key));
    const std::string tempo =
        measure.tempo ? tempo_words(*measure.tempo, meter_, "\n") : std::string();
    text += tempo.empty() ? "# tempo: 96            # the score gives none\n" : tempo + "\n";
    return text;
  }

  std::string changes() {
    std::string text;
    for (std::size_t at = 1; at < score_.bars.size(); ++at) {
      const ScoreMeasure& before = measure_of(score_.bars[at - 1]);
      const ScoreMeasure& here = measure_of(score_.bars[at]);
      std::string change;
      if (here.meter != before.meter && here.meter) {
        const std::string meter = meter_words(*here.meter);
        if (!meter.empty() && meter != meter_) change += fmt::format(", meter: {}", meter);
        if (!meter.empty()) meter_ = meter;
      }
      if (here.key != before.key && here.key)
        change += fmt::format(", key: {}", key_words(*here.key));
      if (here.tempo != before.tempo && here.tempo)
        if (const std::string tempo = tempo_words(*here.tempo, meter_, ", "); !tempo.empty())
          change += ", " + tempo;
      if (!change.empty())
        text += fmt::format("  - {{bar: {}{}}}\n", score_.bars[at].number, change);
    }
    return text.empty() ? text : "changes:\n" + text;
  }

 private:
  const ScoreMeasure& measure_of(const ScoreBar& bar) const {
    return score_.measures[static_cast<std::size_t>(bar.first) - 1];
  }

  // In beats of the meter.
  std::string pickup(const ScoreBar& bar) const {
    const auto meter = parse_meter(meter_.empty() ? "4/4" : meter_);
    // A meter that a piece file cannot say has given way to one that may be shorter.
    const double beats = std::min(bar.length.value() * meter->unit / 4, meter->count() - 0.5);
    return fmt::format("pickup: {:.6g}\n", beats);
  }

  const Score& score_;
  std::string meter_;  // in force
};

}  // namespace

std::string music_lines(const Score& score) {
  MusicLines lines(score);
  std::string text = lines.first();
  return text + lines.changes();
}

}  // namespace cahier
