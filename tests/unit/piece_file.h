// A piece as the text of a piece file.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "piece/piece.h"

namespace cahier::sample {

inline std::string written(const BarRange& bars) {
  return fmt::format("{}-{}", bars.first, bars.last);
}

inline std::string written(int bar) { return std::to_string(bar); }

template <typename T>
std::string list_of(const std::vector<T>& all) {
  std::string text;
  for (const T& one : all) text += (text.empty() ? "" : ", ") + written(one);
  return "[" + text + "]";
}

inline std::string tempo_fields(const Tempo& tempo, const std::string& between) {
  return fmt::format("tempo: {}{}beat: {}", tempo.per_minute, between, beat_name(tempo.beat));
}

// Everything of the piece but its marks and wishes.
inline std::string piece_file(const Piece& piece) {
  std::string text =
      fmt::format("title: {}\nbars: {}\nmeter: {}\nlevel: {}\ninstrument: {}\n", piece.title,
                  piece.bars, piece.meter.text(), piece.level, piece.instrument.name);
  std::string parts;
  for (const std::string& part : piece.parts()) parts += (parts.empty() ? "" : ", ") + part;
  text += fmt::format("parts: [{}]\n", parts);
  if (piece.pickup > 0) text += fmt::format("pickup: {}\n", piece.pickup);
  if (piece.key) text += fmt::format("key: {}\n", piece.key->text);
  if (piece.tempo) text += tempo_fields(*piece.tempo, "\n") + "\n";
  if (!piece.changes.empty()) text += "changes:\n";
  for (const Change& change : piece.changes) {
    text += fmt::format("  - {{bar: {}", change.bar);
    if (change.meter) text += fmt::format(", meter: {}", change.meter->text());
    if (change.key) text += fmt::format(", key: {}", change.key->text);
    if (change.tempo) text += ", " + tempo_fields(*change.tempo, ", ");
    text += "}\n";
  }
  if (!piece.sections.empty()) text += "sections:\n";
  for (const Section& section : piece.sections) {
    text += fmt::format("  - {{name: {}, bars: {}", section.name, written(section.bars));
    if (!section.phrases.empty()) text += ", phrases: " + list_of(section.phrases);
    if (section.level) text += fmt::format(", level: {}", *section.level);
    if (section.same_as) text += ", same as: " + written(*section.same_as);
    text += "}\n";
  }
  if (!piece.hard.empty()) text += "hard:\n";
  for (const HardBars& hard : piece.hard)
    text += fmt::format("  - {{bars: {}, level: {}}}\n", written(hard.bars), hard.level);
  if (!piece.look_alikes.empty()) text += "look-alikes:\n";
  for (const LookAlikes& group : piece.look_alikes)
    text +=
        fmt::format("  - {{bars: {}, fork: {}}}\n", list_of(group.passages), list_of(group.forks));
  if (!piece.repeats.empty()) text += "repeats:\n";
  for (const Repeat& repeat : piece.repeats)
    text += fmt::format("  - {{bars: {}, times: {}}}\n", written(repeat.bars), repeat.times);
  std::string endings;
  for (const Repeat& repeat : piece.repeats)
    for (const Ending& ending : repeat.endings)
      endings +=
          fmt::format("  - {{bars: {}, times: {}}}\n", written(ending.bars), list_of(ending.times));
  if (!endings.empty()) text += "endings:\n" + endings;
  if (!piece.cues.empty()) text += "cues: " + list_of(piece.cues) + "\n";
  return text;
}

}  // namespace cahier::sample
